using System.Collections.Immutable;

namespace Sequencer.Proof.Runs;

/// <summary>The states of a run after so many scans.</summary>
internal sealed record PassedState(long Scans, ImmutableArray<long> States);
