using Sequencer.Text;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// What the author wrote, and where. The checked program holds the value that counts, said or not;
/// a rule that asks the author to say it must look at the text.
/// </summary>
internal static class WrittenWords
{
    /// <summary>The name inside its declaration; all of the declaration where it is not found.</summary>
    public static SourceSpan Name(SourceSpan declaration, string name)
    {
        ReadOnlySpan<char> text = declaration.Text;
        for (int start = 0; start <= text.Length - name.Length; start++)
        {
            bool begins = start == 0 || !IsPartOfName(text[start - 1]);
            bool ends = start + name.Length == text.Length || !IsPartOfName(text[start + name.Length]);
            if (begins && ends && text[start..].StartsWith(name, StringComparison.Ordinal))
            {
                return declaration.Source.At(declaration.Span.Start + start, name.Length);
            }
        }

        return declaration;
    }

    private static bool IsPartOfName(char character) => char.IsAsciiLetterOrDigit(character) || character == '_';

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
