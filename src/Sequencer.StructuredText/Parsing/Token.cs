using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// A word of the text. <see cref="Text"/> is in capitals for keywords and symbols and as written else;
/// <see cref="Number"/> is the value of an integer, or the milliseconds of a duration.
/// </summary>
internal readonly record struct Token(TokenKind Kind, string Text, decimal Number, SourceSpan Span)
{
    public bool Is(string keywordOrSymbol) =>
        Kind is TokenKind.Keyword or TokenKind.Symbol && string.Equals(Text, keywordOrSymbol, StringComparison.Ordinal);

    public string Shown => Kind == TokenKind.End ? "the end of the file" : $"`{Span.Text.ToString()}`";
}
