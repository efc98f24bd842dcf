using System.Collections.Immutable;

namespace Sequencer.Control.Traces;

/// <summary>The same inputs (in the order of the system's inputs) for a number of scans, at least one.</summary>
public sealed record TraceSegment(ImmutableArray<long> Inputs, int Scans);
