namespace Sequencer.Testing.Pascal;

internal enum TextTokenKind
{
    Name,
    Number,
    Duration,
    Address,
    Symbol,
    End,
}

/// <summary>A piece of structured text, and its line from 1.</summary>
internal readonly record struct TextToken(TextTokenKind Kind, string Text, int Line)
{
    /// <summary>Words are the same in any case (IEC 61131-3, clause from memory).</summary>
    public bool Is(string word) => Kind is TextTokenKind.Name or TextTokenKind.Symbol && string.Equals(Text, word, StringComparison.OrdinalIgnoreCase);

    public override string ToString() => Kind == TextTokenKind.End ? "the end of the text" : $"`{Text}` in line {Line}";
}
