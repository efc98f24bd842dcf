using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// How many scans exported text ran like its program and how many variables were compared in each; the
/// first difference, or what the reader could not read. <see cref="Systems"/> are what was read, a block each, where
/// everything agrees.
/// </summary>
public sealed record ReadBackResult(
    long Scans, long Compared, LockstepDifference? Difference, ImmutableArray<Diagnostic> Diagnostics, ImmutableArray<TransitionSystem> Systems)
{
    public bool Agrees => Difference is null && Compared > 0;
}
