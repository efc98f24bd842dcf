using System.Collections.Immutable;
using System.Text;
using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>
/// Puts words in the place of a module's names, token by token, and keeps for each stretch where it came from: what
/// is read then is plain text of the language, on the lines of the library.
/// </summary>
internal static class ModuleText
{
    /// <param name="library">The library.</param>
    /// <param name="lines">The lines of a module's body.</param>
    /// <param name="replacement">What comes in the place of a name, and where that was given; null where the name stays.</param>
    /// <param name="use">The use that the text is for; null where the module itself is read.</param>
    public static SourceText Of(SourceText library, ImmutableArray<LogicalLine> lines, Func<string, ModuleWord?> replacement, ModuleUse? use)
    {
        if (lines.IsEmpty)
        {
            return new SourceText(library.Path, "");
        }

        int start = BodyStart(library, lines[0]);
        StringBuilder text = new();
        text.Append('\n', library.Position(start).Line - 1);
        ImmutableArray<TextPiece>.Builder pieces = ImmutableArray.CreateBuilder<TextPiece>();
        pieces.Add(new TextPiece(0, new TextSpan(start, 0), true));
        int copied = start;
        foreach (LogicalLine line in lines)
        {
            foreach (Token token in Names(library, line))
            {
                if (replacement(token.Text) is not { } put)
                {
                    continue;
                }

                TextSpan place = token.Span.Shift(line.Span.Start);
                Copy(place.Start);
                text.Append(put.Text[0] == '-' && text[^1] == '-' ? " " : "");
                pieces.Add(new TextPiece(text.Length, place, true, put.Given));
                text.Append(put.Text);
                copied = place.End;
            }
        }

        Copy(lines[^1].Span.End);
        return new SourceText(library, text.ToString(), pieces.ToImmutable(), use);

        void Copy(int end)
        {
            pieces.Add(new TextPiece(text.Length, TextSpan.Between(copied, end), false));
            text.Append(library.Content, copied, end - copied);
        }
    }

    /// <summary>
    /// The names in a line: words that are neither keywords nor units (which follow a number), nor the state in
    /// <c>unit is Held</c>, nor the words of <c>priority high</c> and <c>changes over</c>, nor <c>duty</c> before the name in a
    /// pair, nor <c>granted</c> and <c>taken</c> behind a name, nor what stands behind a point, nor the parameter that an argument
    /// is for, nor the module in <c>equipment X is Y</c>.
    /// </summary>
    public static IEnumerable<Token> Names(SourceText library, LogicalLine line)
    {
        ImmutableArray<Token> tokens = new Tokenizer(library.Content.Substring(line.Span.Start, line.Span.Length)).Read();
        bool isEquipment = tokens is [{ Text: "equipment" }, ..];
        bool isPair = tokens is [{ Text: "pair" }, ..];
        for (int index = 0; index < tokens.Length; index++)
        {
            Token token = tokens[index];
            bool isArgument = isEquipment && index + 1 < tokens.Length && tokens[index + 1].Text == "=";
            bool isOfAnother = index > 0 && (tokens[index - 1].Kind == TokenKind.Number || tokens[index - 1].Text is "is" or "." or "priority" or "changes");
            bool isDuty = isPair && token.Text == "duty" && index + 1 < tokens.Length && tokens[index + 1].Kind == TokenKind.Word;
            bool isAspect = token.Text is "granted" or "taken" && index > 0 && tokens[index - 1] is { Kind: TokenKind.Word, IsKeyword: false };
            if (token.Kind == TokenKind.Word && !token.IsKeyword && !isArgument && !isOfAnother && !isDuty && !isAspect)
            {
                yield return token;
            }
        }
    }

    /// <summary>Where the comments above the first line begin, which may be for the documents.</summary>
    private static int BodyStart(SourceText library, LogicalLine first)
    {
        int line = library.Position(first.Span.Start).Line;
        while (line > 1 && library.Line(line - 1).TrimStart(" \t") is var above && (above.IsEmpty || above.StartsWith("--")))
        {
            line--;
        }

        return library.LineStart(line);
    }
}
