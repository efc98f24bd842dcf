using System.Collections.Immutable;
using Sequencer.Simulation.Plants;

namespace Sequencer.Simulation.Records;

/// <summary>
/// What happened in a run. The table has a row at each sampling time and at each change of a state,
/// step, contact or output; visits, tallies and events are exact to the scan.
/// </summary>
public sealed record RunRecord(string Name, int ScanMilliseconds, long Scans, ImmutableArray<RunColumn> Columns, RecordTable Table)
{
    public ImmutableArray<RunEvent> Events { get; init; } = [];

    public ImmutableArray<StepVisit> Steps { get; init; } = [];

    public ImmutableArray<StateVisit> States { get; init; } = [];

    public ImmutableArray<OutputTally> Outputs { get; init; } = [];

    public ImmutableArray<PlantBalance> Balances { get; init; } = [];

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
