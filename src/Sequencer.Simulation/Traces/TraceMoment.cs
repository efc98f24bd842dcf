using System.Collections.Immutable;

namespace Sequencer.Simulation.Traces;

/// <summary>A scan in which something happens.</summary>
/// <param name="Scan">From 1.</param>
/// <param name="Waited">Why time passed since the moment before; null where none did, or nothing is known.</param>
/// <param name="Happenings">In the order of a scan: what comes in, what the program makes of it, what it writes.</param>
public sealed record TraceMoment(long Scan, string? Waited, ImmutableArray<TraceHappening> Happenings);
