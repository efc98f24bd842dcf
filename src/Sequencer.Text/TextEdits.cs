using System.Text;

namespace Sequencer.Text;

/// <summary>Edits of one text, put into it as it stands in its file: what they do not touch keeps every byte, line ends of any kind too.</summary>
public static class TextEdits
{
    /// <param name="written">The text as it stands in the file, which reads as the sources of the edits do.</param>
    /// <param name="edits">Edits of that text; the same one may come several times.</param>
    /// <returns>The new text; null where two edits touch the same words, or where the file holds another text by now.</returns>
    public static string? Apply(string written, IEnumerable<TextEdit> edits)
    {
        List<int> offsets = Offsets(written);
        string lineEnd = written.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        StringBuilder text = new();
        int done = 0;
        int before = -1;
        foreach (TextEdit edit in edits.DistinctBy(edit => (edit.Span.Span, edit.Text)).OrderBy(edit => edit.Span.Span.Start).ThenBy(edit => edit.Span.Span.Length))
        {
            TextSpan span = edit.Span.Span;
            if (span.Start < before || (span.Start == before && span.Length == 0) || offsets.Count - 1 != edit.Span.Source.Content.Length || !Reads(written, edit.Span.Source.Content))
            {
                return null;
            }

            text.Append(written, done, offsets[span.Start] - done).Append(edit.Text.Replace("\n", lineEnd, StringComparison.Ordinal));
            done = offsets[span.End];
            before = span.End;
        }

        return text.Append(written, done, written.Length - done).ToString();
    }

    private static bool Reads(string written, string content) =>
        written == content || written.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n') == content;

    /// <summary>Where each character of the text with plain line ends stands in the text as written, and its end.</summary>
    private static List<int> Offsets(string written)
    {
        List<int> offsets = new(written.Length + 1);
        for (int index = 0; index < written.Length; index++)
        {
            offsets.Add(index);
            if (written[index] == '\r' && index + 1 < written.Length && written[index + 1] == '\n')
            {
                index++;
            }
        }

        offsets.Add(written.Length);
        return offsets;
    }
}
