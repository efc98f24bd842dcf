using System.Collections.Immutable;
using System.Text;
using Sequencer.Language.Parsing;

namespace Sequencer.Language.Formatting;

/// <summary>The blanks between the tokens of one line: one, but none inside brackets, before a comma, around the point of a total or behind a sign.</summary>
internal static class TokenSpacing
{
    /// <param name="tokens">All tokens of the statement.</param>
    /// <param name="from">The first one written.</param>
    /// <param name="to">The one behind the last.</param>
    public static string Join(ImmutableArray<Token> tokens, int from, int to)
    {
        StringBuilder text = new();
        for (int index = from; index < to; index++)
        {
            if (index > from && NeedsBlank(tokens, index))
            {
                text.Append(' ');
            }

            text.Append(tokens[index].Text);
        }

        return text.ToString();
    }

    private static bool NeedsBlank(ImmutableArray<Token> tokens, int index)
    {
        Token before = tokens[index - 1];
        Token token = tokens[index];
        if (IsSymbol(token, ",") || IsSymbol(token, ")") || IsSymbol(before, "("))
        {
            return false;
        }

        if (IsSymbol(token, "(") && (tokens[0].Text is "module" or "equipment"))
        {
            return false;
        }

        bool isPoint = IsSymbol(token, ".") && before.Kind == TokenKind.Word;
        bool followsPoint = IsSymbol(before, ".") && token.Kind == TokenKind.Word;
        return !isPoint && !followsPoint && !(token.Kind == TokenKind.Number && IsSign(tokens, index - 1));
    }

    /// <summary>
    /// A stroke that makes the number behind it negative, and takes nothing from what stands before it: that is a
    /// sign, a keyword, or the name that a statement declares (<c>input TT101 -20 .. 60 degC</c>).
    /// </summary>
    private static bool IsSign(ImmutableArray<Token> tokens, int index) =>
        IsSymbol(tokens[index], "-")
        && (index == 0 || (index == 2 && tokens[0].IsKeyword) || tokens[index - 1].IsKeyword
            || (tokens[index - 1].Kind == TokenKind.Symbol && tokens[index - 1].Text != ")"));

    private static bool IsSymbol(Token token, string sign) => token.Kind == TokenKind.Symbol && token.Text == sign;
}
