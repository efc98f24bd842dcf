using System.Collections.Immutable;

namespace Sequencer.Simulation.Records;

/// <summary>
/// How long and how often an output was energised. <see cref="OnTimes"/> are the times themselves;
/// beyond a bound they are only counted (<see cref="Pulses"/> stays exact).
/// </summary>
public sealed record OutputTally(string Output, long OnScans, long Pulses, ImmutableArray<ScanInterval> OnTimes);
