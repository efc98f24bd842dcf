using System.Collections.Immutable;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Reports;

/// <summary>How long a unit's finished batches took in a run.</summary>
internal sealed record BatchTimes(string Unit, int Batches, double MeanSeconds)
{
    private const double SecondsOfDay = 86_400;

    /// <summary>Batches a day where each begins when the last has ended.</summary>
    public double MostADay => SecondsOfDay / MeanSeconds;

    /// <summary>The units that finished a batch, the slowest first: it says how many a day there can be.</summary>
    public static ImmutableArray<BatchTimes> Of(RunRecord record) =>
    [
        .. record.Batches.Where(batch => batch.State == UnitState.Complete && batch.ToScan is not null)
            .GroupBy(batch => batch.Unit, StringComparer.Ordinal)
            .Select(unit => new BatchTimes(unit.Key, unit.Count(), unit.Average(batch => record.SecondsAt((batch.ToScan ?? batch.FromScan) - batch.FromScan))))
            .OrderByDescending(unit => unit.MeanSeconds),
    ];
}
