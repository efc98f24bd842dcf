using System.Collections.Immutable;
using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>
/// The record of one batch of a unit, closed by whatever ended it; <see cref="ToScan"/> is null where the
/// run ended first, and the record is open then.
/// </summary>
public sealed record BatchClosing(string Unit, int Number, long FromScan, long? ToScan, UnitState State, ImmutableArray<BatchEntry> Entries)
{
    /// <summary>What passed each line of the plant while the batch lasted.</summary>
    public ImmutableArray<LineLedger> Passed { get; init; } = [];
}
