using Sequencer.Simulation.Trials;
using Sequencer.Simulation.Words;

namespace Sequencer.Sites.Trials;

/// <summary>A run with a fault in words: what the controller did, when all was at rest, what was lost, how it ended.</summary>
internal sealed record FaultRow(string Fault, string At, string Controller, string Safe, string Lost, string Ended, UnsafeEnd Unsafe)
{
    /// <summary>A difference below this share of what the run without a fault takes is not told.</summary>
    private const double Told = 0.005;

    public static FaultRow Of(TrialSet set, TrialDraw draw, RunSummary run)
    {
        double at = draw.Faults.Min(fault => fault.Seconds);
        int scenario = set.Trials.Scenarios.TakeWhile(candidate => candidate.Name != draw.Base).Count();
        return new FaultRow(
            string.Join(" and ", draw.Faults.Select(fault => fault.Fault)),
            string.Join(" and ", draw.Faults.Select(fault => DurationWords.Clock(fault.Seconds))),
            Did(run, at),
            UntilSafe(run, at, set.UnsafeOf(run) != UnsafeEnd.None),
            Cost(set, run, set.BaseSummaries[scenario]),
            End(set, run),
            set.UnsafeOf(run));
    }

    private static string Did(RunSummary run, double at)
    {
        string[] did =
        [
            .. run.FirstAlarm is { } alarm ? [$"alarm {alarm.Name} after {DurationWords.Of(alarm.Seconds - at)}"] : Array.Empty<string>(),
            .. run.Reaction is { } reaction ? [$"{reaction.Name} after {DurationWords.Of(reaction.Seconds - at)}"] : Array.Empty<string>(),
        ];
        return did.Length == 0 ? "nothing" : string.Join("; ", did);
    }

    /// <summary>A unit that rests is not safe where something ran over, or more was dosed, before or after.</summary>
    private static string UntilSafe(RunSummary run, double at, bool isUnsafe) =>
        isUnsafe ? (double.IsFinite(run.RestSeconds) ? $"not safe; rests after {DurationWords.Of(run.RestSeconds - at)}" : "never")
        : double.IsFinite(run.RestSeconds) ? DurationWords.Of(run.RestSeconds - at)
        : run.Reaction is not null ? "never"
        : run.End == RunEndKind.Came ? "ran on to the end"
        : "never";

    private static string Cost(TrialSet set, RunSummary run, RunSummary without)
    {
        List<string> lost = [];
        if (!double.IsFinite(run.BatchSeconds) && double.IsFinite(without.BatchSeconds))
        {
            lost.Add("the batch is not finished");
        }
        else if (run.BatchSeconds - without.BatchSeconds > Told * without.BatchSeconds)
        {
            lost.Add($"{DurationWords.Of(run.BatchSeconds - without.BatchSeconds)}");
        }

        for (int index = 0; index < set.Trials.Measures.Values.Length; index++)
        {
            TrialValue value = set.Trials.Measures.Values[index];
            double more = run.Values[index] - without.Values[index];
            if (value.Name.EndsWith(".used", StringComparison.Ordinal) && more > Math.Max(Told * without.Values[index], 1e-3))
            {
                lost.Add($"{DoseWords.Litres(more)} of {value.Name[..^".used".Length]}");
            }
        }

        if (run.OverflowedInAll > 0)
        {
            lost.Add($"{DoseWords.Litres(run.OverflowedInAll)} over rims");
        }

        if (run.Leaked > 0)
        {
            lost.Add($"{DoseWords.Litres(run.Leaked)} leaked");
        }

        return lost.Count == 0 ? "nothing" : string.Join(", ", lost);
    }

    private static IEnumerable<string> AtRest(RunSummary run) => run.Final.Split(", ").Where(unit =>
        unit.EndsWith(" Held", StringComparison.Ordinal) || unit.EndsWith(" Stopped", StringComparison.Ordinal) || unit.EndsWith(" Aborted", StringComparison.Ordinal));

    private static string End(TrialSet set, RunSummary run)
    {
        string how = run.End switch
        {
            RunEndKind.Came => $"finished at {DurationWords.Clock(run.BatchSeconds)}{string.Concat(AtRest(run).Select(unit => $", {unit}"))}",
            RunEndKind.TimeOver or RunEndKind.AtRest => run.Final,
            _ => "",
        };
        string unsafeWords = set.UnsafeWords(run);
        return unsafeWords.Length == 0 ? how : how.Length == 0 ? $"**{unsafeWords}**" : $"**{unsafeWords}**; {how}";
    }
}
