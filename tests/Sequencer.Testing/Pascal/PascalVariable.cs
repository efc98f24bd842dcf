namespace Sequencer.Testing.Pascal;

/// <summary>A variable of a block: its name in the text, the words that open its section, its type and its first value in Pascal.</summary>
public sealed record PascalVariable(string Name, string Section, PascalType Type, string Initial)
{
    public bool IsTemporary => Section.StartsWith("VAR_TEMP", StringComparison.OrdinalIgnoreCase);

    public bool IsInput => Section.StartsWith("VAR_INPUT", StringComparison.OrdinalIgnoreCase);

    public bool IsRetained => Section.EndsWith(" RETAIN", StringComparison.OrdinalIgnoreCase);

    public bool IsConstant => Section.EndsWith(" CONSTANT", StringComparison.OrdinalIgnoreCase);
}
