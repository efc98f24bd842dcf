using System.Collections.Immutable;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Simulation.Words;

namespace Sequencer.Sites.Trials;

/// <summary>One thing that came of every run, with its value in each, in the order of the runs.</summary>
internal sealed record TrialOutcome(string Title, string Unit, ImmutableArray<double> Values)
{
    /// <summary>The bound that a consent gives it; null for none.</summary>
    public double? Low { get; init; }

    public double? High { get; init; }

    /// <summary>Not the same, but for rounding, in every run that has it.</summary>
    public bool Varies
    {
        get
        {
            Distribution spread = new(Values);
            return spread.Count > 0 && spread.Highest - spread.Lowest > Same * Math.Max(Math.Abs(spread.Lowest), Math.Abs(spread.Highest));
        }
    }

    private const double SecondsPerHour = 3600.0;
    private const double Same = 1e-4;
    private const int Figures = 4;

    public static IEnumerable<TrialOutcome> All(TrialSet set)
    {
        yield return new TrialOutcome(Awaited(set), "h", [.. set.Runs.Select(run => run.BatchSeconds / SecondsPerHour)]);
        if (set.Settings.Faults != TrialFaults.None)
        {
            yield return new TrialOutcome("time from the fault to a safe state", "min", [.. set.Runs.Select((run, index) => set.UnsafeOf(run) != UnsafeEnd.None ? double.NaN : (run.RestSeconds - set.Plan.Draw(index + 1).Faults.Min(fault => fault.Seconds)) / 60.0)]);
        }

        for (int index = 0; index < set.Trials.Measures.Values.Length; index++)
        {
            int place = index;
            TrialValue value = set.Trials.Measures.Values[index];
            string taken = value.Taken switch { TakenAs.Highest => ", highest", TakenAs.Lowest => ", lowest", _ => "" };
            yield return new TrialOutcome(value.Title + taken, value.Unit, [.. set.Runs.Select(run => run.Values[place])])
            {
                Low = set.Site.Metadata.DischargeLimits.FirstOrDefault(limit => limit.Quantity == value.Name)?.Minimum,
                High = set.Site.Metadata.DischargeLimits.FirstOrDefault(limit => limit.Quantity == value.Name)?.Maximum,
            };
        }

        yield return new TrialOutcome("over rims in all", "L", [.. set.Runs.Select(run => run.OverflowedInAll)]);
    }

    private static string Awaited(TrialSet set) => set.Trials.Scenarios[0].Until?.Event is Event.StateReached { } reached && set.Trials.Scenarios.All(scenario => scenario.Until?.Event == reached)
        ? $"time until {reached.Unit} is {reached.State}"
        : "time until the scenario has what it waits for";

    public string Words(double value) => ValueWords.Significant(value, Figures, Unit);
}
