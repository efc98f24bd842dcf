using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Trials;

/// <summary>A run that is worth a look, as a scenario that plays it again.</summary>
internal sealed record WorstRun(string File, string Why, string Text)
{
    /// <summary>Unsafe runs that are kept; the table of the runs has all.</summary>
    private const int MostUnsafe = 100;

    /// <summary>Of a set without faults, where many runs can be unsafe in one way, so many of each way.</summary>
    private const int MostOfAWay = 3;

    /// <summary>Ways to come to rest with nothing broken, the commonest, of each of which a run is kept.</summary>
    private const int MostRests = 10;

    public static ImmutableArray<WorstRun> Of(TrialSet set)
    {
        List<(int Run, string Why)> chosen = [];
        foreach (IGrouping<UnsafeEnd, int> way in Enumerable.Range(0, set.Runs.Length).Where(run => set.Runs[run].End != RunEndKind.NotPlayable && set.UnsafeOf(set.Runs[run]) != UnsafeEnd.None)
            .GroupBy(run => set.UnsafeOf(set.Runs[run])).OrderBy(way => UnsafeEnds.Order(way.Key)))
        {
            int most = set.Settings.Faults == TrialFaults.Each ? MostUnsafe : MostOfAWay;
            chosen.AddRange(way.Take(most).Select(run => (run, set.UnsafeWords(set.Runs[run]))));
        }

        chosen = [.. chosen.Take(MostUnsafe)];
        if (set.Settings.Faults == TrialFaults.None)
        {
            chosen.AddRange(RestRuns.Of(set).Take(MostRests).Select(rest => (rest.Runs[0], $"{rest.What} with nothing broken, alarm {rest.Alarm}")));
            foreach (TrialOutcome outcome in TrialOutcome.All(set).Where(outcome => outcome.Varies))
            {
                int[] runs = [.. Enumerable.Range(0, set.Runs.Length).Where(run => double.IsFinite(outcome.Values[run]))];
                bool isLowest = outcome is { Low: not null, High: null };
                int worst = isLowest ? runs.MinBy(run => outcome.Values[run]) : runs.MaxBy(run => outcome.Values[run]);
                chosen.Add((worst, $"{outcome.Title}: {outcome.Words(outcome.Values[worst])}, the {(isLowest ? "least" : "most")} of all runs"));
            }
        }

        return [.. chosen.GroupBy(one => one.Run, one => one.Why).Select(run => Written(set, run.Key, string.Join("; ", run)))];
    }

    private static WorstRun Written(TrialSet set, int run, string why)
    {
        TrialDraw draw = set.Plan.Draw(run + 1);
        string number = (run + 1).ToString(CultureInfo.InvariantCulture);
        string recipe = draw.Recipe == TrialDescription.ScenariosOwn ? "" : $" with recipe {draw.Recipe}";
        // In whole scans: the loop's own sum is off in its last digits, which nobody should have to read.
        double seconds = Math.Round(set.Runs[run].Seconds * 1000.0 / set.Site.System.ScanMilliseconds) * set.Site.System.ScanMilliseconds / 1000.0;
        Scenario scenario = draw.Scenario with
        {
            Description = $"Run {number} of the trials with seed {set.Settings.Seed.ToString(CultureInfo.InvariantCulture)}, made of `{draw.Base}`{recipe}: {why}. Whoever plays it again is told whether its units still end in the states that they ended in then.",
            DurationSeconds = set.Runs[run].End == RunEndKind.Came ? draw.Scenario.DurationSeconds : seconds,
            Expectations = [.. Ends(set.Runs[run].Final, draw.Scenario)],
        };
        string faults = string.Concat(draw.Faults.Select(fault => "-" + FileNames.Of(fault.Fault)));
        return new WorstRun($"worst/run-{number}{faults}.yaml", why, ScenarioText.Write(scenario));
    }

    private static IEnumerable<Expectation> Ends(string states, Scenario scenario) =>
        from unit in states.Split(", ", StringSplitOptions.RemoveEmptyEntries)
        let words = unit.Split(' ')
        select new Expectation.FinalState(words[0], Enum.Parse<UnitState>(words[1]), scenario.Span);
}
