using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>
/// One mistake, told once: a stable code (<c>SEQ</c> and four digits), the smallest span that shows
/// it, what is wrong, why that matters on a plant, and how to mend it. Wording: lower case, no full
/// stop at the end of the message, names in backticks, a unit with every number.
/// </summary>
public sealed record Diagnostic(
    string Code,
    Severity Severity,
    SourceSpan Span,
    string Message,
    string Reason,
    string Mend)
{
    public ImmutableArray<RelatedNote> Notes { get; init; } = [];

    /// <summary>The mend as edits, where there is exactly one; null where a person has to decide.</summary>
    public Fix? Fix { get; init; }

    /// <summary>The notes and, for a place in a module, the use that it is about and the uses around that.</summary>
    public IEnumerable<RelatedNote> AllNotes
    {
        get
        {
            foreach (RelatedNote note in Notes)
            {
                yield return note;
            }

            for (SourceSpan place = Span; place.Source.Use is { } use;)
            {
                SourceSpan? given = place.Source.Given(place.Span);
                place = given ?? use.Place;
                yield return new RelatedNote(place, given is null ? $"read for `{use.Name}`, which stands here" : $"given here, for `{use.Name}`");
            }
        }
    }

    /// <summary>The order in which diagnostics are shown: file, place, code, wording.</summary>
    public static int Compare(Diagnostic left, Diagnostic right)
    {
        int byPath = string.CompareOrdinal(left.Span.Source.Path, right.Span.Source.Path);
        if (byPath != 0)
        {
            return byPath;
        }

        int byPlace = left.Span.Written.Span.Start.CompareTo(right.Span.Written.Span.Start);
        if (byPlace != 0)
        {
            return byPlace;
        }

        int byCode = string.CompareOrdinal(left.Code, right.Code);
        return byCode != 0 ? byCode : string.CompareOrdinal(left.Message, right.Message);
    }
}
