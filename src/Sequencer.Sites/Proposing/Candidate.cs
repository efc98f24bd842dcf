using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>An addition to a program that may mend a requirement. Nothing is known of it yet.</summary>
/// <param name="Edit">What is put where.</param>
/// <param name="Words">The addition in a line.</param>
/// <param name="Name">The name of the new interlock; null where a way gets a further condition.</param>
/// <param name="Hazard">What it guards against.</param>
/// <param name="Devices">How many outputs it blocks, or ways it narrows.</param>
internal sealed record Candidate(TextEdit Edit, string Words, string? Name, Hazard Hazard, int Devices)
{
    public SourceText File => Edit.Span.Source;

    /// <summary>The file with the addition in it; null where it cannot be put there.</summary>
    public SourceText? Mended() => TextEdits.Apply(File.Content, [Edit]) is { } text ? new SourceText(File.Path, text) : null;

    /// <summary>Smaller ones first; of the same size, interlocks before ways, fewer devices before more.</summary>
    public static ImmutableArray<Candidate> InOrder(IEnumerable<Candidate> candidates) =>
    [
        .. candidates.DistinctBy(one => (one.File.Path, one.Edit.Span.Span.Start, one.Words)).OrderBy(one => one.Hazard.Size).ThenBy(one => one.Name is null).ThenBy(one => one.Devices),
    ];
}
