using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>A unit in a state from one scan to another (exclusive); the end is null if it still was when the run ended.</summary>
public sealed record StateVisit(string Unit, UnitState State, long FromScan, long? ToScan);
