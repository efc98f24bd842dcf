using Sequencer.Text;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// Whether the author wrote some words. The checked program holds the value that counts, said or not;
/// a rule that asks the author to say it must look at the text.
/// </summary>
internal static class WrittenWords
{
    /// <summary>The words stand in the span, outside quotes and comments, with single or more blanks between.</summary>
    public static bool Say(SourceSpan span, string words)
    {
        List<char> bare = [];
        bool quoted = false;
        bool comment = false;
        ReadOnlySpan<char> text = span.Text;
        for (int index = 0; index < text.Length; index++)
        {
            char character = text[index];
            if (character == '\n')
            {
                (quoted, comment) = (false, false);
            }
            else if (character == '"' && !comment)
            {
                quoted = !quoted;
            }
            else if (!quoted && text[index..].StartsWith("--", StringComparison.Ordinal))
            {
                comment = true;
            }

            bare.Add(quoted || comment || char.IsWhiteSpace(character) ? ' ' : character);
        }

        string line = string.Join(' ', new string([.. bare]).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return line.Contains(words, StringComparison.Ordinal);
    }
}
