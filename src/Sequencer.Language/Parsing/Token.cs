using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>A word, number, text, address or sign of one logical line, at its place from the line's start.</summary>
internal readonly record struct Token(TokenKind Kind, string Text, TextSpan Span)
{
    public bool IsKeyword => Kind == TokenKind.Word && StatementWords.Keywords.Contains(Text);
}
