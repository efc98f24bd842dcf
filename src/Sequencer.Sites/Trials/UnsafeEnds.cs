using System.Collections.Immutable;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Trials;
using Sequencer.Simulation.Words;

namespace Sequencer.Sites.Trials;

/// <summary>Whether and how a run ended unsafe, as far as a simulation can know.</summary>
internal static class UnsafeEnds
{
    public static UnsafeEnd Of(RunSummary summary, TrialMeasures measures, ImmutableArray<DischargeLimit> limits) =>
        (summary.Broken is null ? 0 : UnsafeEnd.RequirementBroken)
        | (summary.Overdosed is null ? 0 : UnsafeEnd.DoseLimitPassed)
        | (Outside(summary, measures, limits).Any() ? UnsafeEnd.OutsideConsent : 0)
        | (summary.OverflowedInAll > 0 ? UnsafeEnd.Overflow : 0)
        | (summary.End == RunEndKind.TimeOver && !summary.IsAtRest ? UnsafeEnd.NoEnd : 0)
        | (summary.End == RunEndKind.ModelStopped ? UnsafeEnd.ModelStopped : 0)
        | (summary.End == RunEndKind.NotPlayable ? UnsafeEnd.NotPlayable : 0);

    /// <summary>What is unsafe, with figures; "" for nothing.</summary>
    public static string Words(RunSummary summary, TrialMeasures measures, ImmutableArray<DischargeLimit> limits) =>
        string.Join("; ", Each(summary, measures, limits));

    /// <summary>Smaller is worse; what is not unsafe comes last.</summary>
    public static int Order(UnsafeEnd end) => end == UnsafeEnd.None ? int.MaxValue : (int)end & -(int)end;

    private static IEnumerable<string> Each(RunSummary summary, TrialMeasures measures, ImmutableArray<DischargeLimit> limits)
    {
        if (summary.Broken is { } broken)
        {
            yield return $"requirement {broken.Name} broken at {DurationWords.Clock(broken.Seconds)}";
        }

        if (summary.Overdosed is { } overdosed)
        {
            yield return $"{overdosed.Output} gave {DoseWords.Litres(overdosed.Litres)} beyond its limit";
        }

        foreach ((DischargeLimit limit, double value, string unit) in Outside(summary, measures, limits))
        {
            yield return $"{limit.Title} {ValueWords.Significant(value, 4, unit)}";
        }

        for (int rim = 0; rim < summary.Overflowed.Length; rim++)
        {
            if (summary.Overflowed[rim] > 0)
            {
                yield return $"{measures.Rims[rim][..measures.Rims[rim].LastIndexOf('.')]} ran over, {DoseWords.Litres(summary.Overflowed[rim])}";
            }
        }

        if (summary.End == RunEndKind.TimeOver && !summary.IsAtRest)
        {
            yield return summary.Asking.Length > 0 ? $"no end; {summary.Asking} is not answered" : "no end";
        }

        if (summary.End == RunEndKind.ModelStopped)
        {
            yield return $"the plant model stopped, what came of it is not known: {summary.Failure}";
        }

        if (summary.End == RunEndKind.NotPlayable)
        {
            yield return "could not be played: the plant cannot have these values together";
        }
    }

    private static IEnumerable<(DischargeLimit Limit, double Value, string Unit)> Outside(RunSummary summary, TrialMeasures measures, ImmutableArray<DischargeLimit> limits)
    {
        for (int index = 0; index < measures.Values.Length; index++)
        {
            foreach (DischargeLimit limit in limits.Where(limit => limit.Quantity == measures.Values[index].Name))
            {
                if (summary.Values[index] < limit.Minimum || summary.Values[index] > limit.Maximum)
                {
                    yield return (limit, summary.Values[index], measures.Values[index].Unit);
                }
            }
        }
    }
}
