using System.Collections.Immutable;

namespace Sequencer.Sites.Proposing;

/// <summary>In whose presence an output must not be on, or a way not be taken: all the parts together, or any.</summary>
internal sealed record Hazard(ImmutableArray<HazardPart> Parts, bool Together)
{
    public Hazard(HazardPart part)
        : this([part], true)
    {
    }

    public int Size => Parts.Sum(part => part.Size);

    /// <summary>What follows <c>blocked</c> in an interlock.</summary>
    public string Blocked => AllDenied ? $"unless {Harmless}" : $"while {Present}";

    /// <summary>What must be so where the hazard must not, fit to stand in a conjunction.</summary>
    public string Absent => (AllDenied, Parts.Length) switch
    {
        (true, 1) => Parts[0].Words,
        (true, _) => Together ? $"({Harmless})" : Harmless,
        (_, 1) => $"not {Parts[0].Words}",
        _ => $"not ({Present})",
    };

    private bool AllDenied => Parts.All(part => part.IsDenied);

    private string Present => Parts.Length == 1
        ? Parts[0].Alone
        : string.Join(Together ? " and " : " or ", Parts.Select(part => part.IsDenied ? "not " + part.Words : part.Words));

    private string Harmless => Parts.Length == 1 ? Parts[0].Alone : string.Join(Together ? " or " : " and ", Parts.Select(part => part.Words));
}
