using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>
/// What a machine can do about a mistake, where there is exactly one way to mend it: a few words that say what, and the
/// edits, all in one file. A fix never changes a number, and no comment.
/// </summary>
public sealed record Fix(string Title, ImmutableArray<TextEdit> Edits)
{
    /// <summary>Words in the place of others; null where there is nothing to put there, or where the place is in no file as it stands.</summary>
    public static Fix? Replace(SourceSpan span, string? by) => by is null || InFile(span) is not { } place
        ? null
        : new Fix($"replace `{place.Text}` with `{by}`", [new TextEdit(place, by)]);

    /// <summary>A line of its own before everything else.</summary>
    public static Fix? FirstLine(SourceText source, string line) => InFile(source.At(0, 0)) is not { } place
        ? null
        : new Fix($"put the line `{line}` before everything else", [new TextEdit(place, line + "\n")]);

    /// <summary>Takes a stretch out.</summary>
    /// <param name="span">The stretch.</param>
    /// <param name="title">What is done, in a few words.</param>
    public static Fix? Delete(SourceSpan span, string title) => InFile(span) is not { } place
        ? null
        : new Fix(title, [new TextEdit(place, "")]);

    /// <summary>Takes a statement out, with its line where nothing else stands there; null where a comment stands inside it.</summary>
    public static Fix? DeleteStatement(SourceSpan statement)
    {
        if (InFile(statement) is not { } place || place.Text.IndexOf("--", StringComparison.Ordinal) >= 0)
        {
            return null;
        }

        string content = place.Source.Content;
        int start = place.Span.Start;
        int end = place.Span.End;
        while (start > 0 && content[start - 1] is ' ' or '\t')
        {
            start--;
        }

        while (end < content.Length && content[end] is ' ' or '\t')
        {
            end++;
        }

        bool isAlone = (start == 0 || content[start - 1] == '\n') && (end == content.Length || content[end] == '\n');
        TextSpan whole = isAlone ? TextSpan.Between(start, Math.Min(end + 1, content.Length)) : TextSpan.Between(place.Span.Start, end);
        return new Fix($"delete `{Shortened(place.Text.ToString())}`", [new TextEdit(new SourceSpan(place.Source, whole), "")]);
    }

    /// <summary>The stretch in the file itself: a text that stands for one use of a module cannot be edited, and neither can words that were put in.</summary>
    private static SourceSpan? InFile(SourceSpan span) =>
        span.Source.Use is null && span.Written.Text.SequenceEqual(span.Text) ? span.Written : null;

    private static string Shortened(string text) => text.Length > 60 ? text[..60] + "..." : text;
}
