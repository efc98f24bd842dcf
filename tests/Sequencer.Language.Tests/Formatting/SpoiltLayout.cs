using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Sequencer.Language.Parsing;

namespace Sequencer.Language.Tests.Formatting;

/// <summary>A program written by a careless hand: the same tokens with other blanks, line ends and comments between them.</summary>
internal static class SpoiltLayout
{
    private static readonly string[] Blanks = [" ", "  ", "\t", "       "];
    private static readonly string[] Ends = ["\n", " \n", "\r\n"];
    private static readonly string[] FarEnds = [.. Ends, "\n\n\n"];
    private static readonly string[] Comments = ["-- a note", "--|  for the documents", "--", "--- ruler ---", "--x \"(, and"];

    /// <param name="program">Without mistakes.</param>
    /// <param name="breaks">Empty lines too, and new lines inside statements where the language allows them.</param>
    /// <param name="comments">Comments on lines of their own, behind statements and inside them.</param>
    public static Gen<string> Of(string program, bool breaks, bool comments) =>
        Gen.Int[0, 1_000_000].Array[program.Length].Select(choices => Spoil(program, choices, breaks, comments));

    private static string Spoil(string program, int[] choices, bool breaks, bool comments)
    {
        StringBuilder text = new();
        LogicalLineReader lines = new(program);
        int turn = 0;
        for (LogicalLine? line = lines.Next(); line is not null; line = lines.Next())
        {
            int choice = choices[turn++];
            text.Append(comments && choice % 5 == 0 ? $"{Pick(Blanks, choice)}{Pick(Comments, choice / 5)}\n" : "");
            text.Append(Pick(Blanks, choice / 7));
            ImmutableArray<Token> tokens = new Tokenizer(program.Substring(line.Span.Start, line.Span.Length)).Read();
            int depth = 0;
            for (int index = 0; index < tokens.Length; index++)
            {
                depth += tokens[index].Text == "(" ? 1 : tokens[index].Text == ")" ? -1 : 0;
                text.Append(tokens[index].Text);
                if (index + 1 < tokens.Length)
                {
                    text.Append(Between(tokens, index, depth, choices[turn++], breaks, comments));
                }
            }

            choice = choices[turn++];
            text.Append(comments && choice % 4 == 0 ? $" {Pick(Comments, choice / 4)}" : "").Append(Pick(breaks ? FarEnds : Ends, choice / 11));
        }

        return text.ToString();
    }

    private static string Between(ImmutableArray<Token> tokens, int index, int depth, int choice, bool breaks, bool comments)
    {
        string next = tokens[index + 1].Text;
        bool mayBreak = (depth > 0 || tokens[index].Text is "," or "and" or "or" or "not") && !StatementWords.Forms.ContainsKey(next);
        if (breaks && mayBreak && choice % 3 == 0)
        {
            string comment = comments && choice % 2 == 0 ? " " + Pick(Comments, choice / 6) : "";
            return comment + Pick(FarEnds, choice / 11) + Pick(Blanks, choice / 13);
        }

        bool mayTouch = tokens[index].Kind == TokenKind.Symbol != (tokens[index + 1].Kind == TokenKind.Symbol) && choice % 3 == 1;
        return mayTouch && !(tokens[index].Kind == TokenKind.Number && next is "." or "..") ? "" : Pick(Blanks, choice / 17);
    }

    private static string Pick(string[] from, int choice) => from[choice % from.Length];
}
