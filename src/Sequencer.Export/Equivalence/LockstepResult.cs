using System.Collections.Immutable;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// What a run in lockstep showed. Agreement speaks of the scans that were run and of the names that were paired:
/// a name in <see cref="Unpaired"/> was not compared (or, an input, was not driven), so that with any left nothing
/// is said to agree.
/// </summary>
public sealed record LockstepResult(
    long Scans,
    ImmutableArray<string> Compared,
    ImmutableArray<string> Unpaired,
    LockstepDifference? Difference)
{
    public bool Agrees => Difference is null && Compared.Length > 0 && Unpaired.IsEmpty;
}
