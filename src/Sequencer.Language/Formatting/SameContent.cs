using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>Whether two texts say the same: the same statements, token by token, and the same comments in the same order.</summary>
internal static class SameContent
{
    public static bool Of(SourceText left, SourceText right) => Parts(left.Content).SequenceEqual(Parts(right.Content), StringComparer.Ordinal);

    private static IEnumerable<string> Parts(string text)
    {
        LogicalLineReader lines = new(text);
        int position = 0;
        for (LogicalLine? line = lines.Next(); line is not null; line = lines.Next())
        {
            foreach (string comment in Comments(text, position, line.Span.Start))
            {
                yield return comment;
            }

            yield return line.Documentation;
            string written = text.Substring(line.Span.Start, line.Span.Length);
            int end = 0;
            foreach (Token token in new Tokenizer(written).Read())
            {
                foreach (string comment in Comments(written, end, token.Span.Start))
                {
                    yield return comment;
                }

                yield return token.Text;
                end = token.Span.End;
            }

            position = line.Span.End;
        }

        foreach (string comment in Comments(text, position, text.Length))
        {
            yield return comment;
        }
    }

    private static IEnumerable<string> Comments(string text, int from, int to) =>
        text[from..to].Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0);
}
