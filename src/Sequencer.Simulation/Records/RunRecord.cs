using System.Collections.Immutable;
using Sequencer.Plant;
using Sequencer.Plant.Ledger;

namespace Sequencer.Simulation.Records;

/// <summary>
/// What happened in a run. The table has a row at each sampling time and at each change of a state,
/// step, contact or output; visits, tallies and events are exact to the scan.
/// </summary>
public sealed record RunRecord(string Name, int ScanMilliseconds, long Scans, ImmutableArray<RunColumn> Columns, RecordTable Table)
{
    /// <summary>The operator's settings at the start; changes after it are among the events.</summary>
    public ImmutableArray<RunSetting> Settings { get; init; } = [];

    public ImmutableArray<RunEvent> Events { get; init; } = [];

    public ImmutableArray<StepVisit> Steps { get; init; } = [];

    public ImmutableArray<StateVisit> States { get; init; } = [];

    public ImmutableArray<BatchClosing> Batches { get; init; } = [];

    public ImmutableArray<OutputTally> Outputs { get; init; } = [];

    /// <summary>How well mass and charge were kept; null only in a record that was never finished.</summary>
    public PlantBalances? Balances { get; init; }

    /// <summary>What the plant has moved from the start to the end.</summary>
    public PlantLedger Ledger { get; init; } = PlantLedger.Empty;

    /// <summary>Where the plant model lost its meaning; the record ends there.</summary>
    public PlantFailure? Failure { get; init; }

    /// <summary>Changes that came too fast for a row each; the next row shows what they led to.</summary>
    public long MergedChanges { get; init; }

    /// <summary>Events beyond the bound of the record, which are only counted.</summary>
    public long DroppedEvents { get; init; }

    public double Seconds => Scans * ScanMilliseconds / 1000.0;

    public double SecondsAt(long scan) => scan * ScanMilliseconds / 1000.0;

    /// <summary>The place of a column by name; -1 where there is none.</summary>
    public int Column(string name)
    {
        for (int index = 0; index < Columns.Length; index++)
        {
            if (Columns[index].Name == name)
            {
                return index;
            }
        }

        return -1;
    }
}
