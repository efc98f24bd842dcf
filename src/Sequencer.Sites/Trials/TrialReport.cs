using System.Globalization;
using Sequencer.Simulation.Trials;
using Sequencer.Simulation.Words;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Trials;

/// <summary>A trial set for people, as Markdown: what ended unsafe first, then what came of all runs.</summary>
internal static class TrialReport
{
    /// <summary>Rows of a list of unsafe runs; the table of the runs has all.</summary>
    private const int MostUnsafe = 50;

    public static string Write(TrialSet set, IReadOnlyList<WorstRun> worst)
    {
        MarkdownPage page = new(set.Site, "Trials");
        Head(page, set);
        Unsafe(page, set);
        if (set.Settings.Faults != TrialFaults.None)
        {
            Faults(page, set);
        }

        Distributions(page, set);
        Drivers(page, set);
        Expectations(page, set);
        Rests(page, set);
        Worst(page, worst);
        page.Paragraph("A run that ends safe shows no more than that this model, with these values, ended so. spec/trials.md says what counts as unsafe, and what a simulation cannot know.");
        return page.Finish();
    }

    private static void Head(MarkdownPage page, TrialSet set)
    {
        string what = set.Settings.Faults switch
        {
            TrialFaults.Each => $"every named fault of every piece alone, {set.Trials.Faults.Length} of them",
            TrialFaults.Pairs => string.Create(CultureInfo.InvariantCulture, $"pairs of faults, {set.Runs.Length} of {TrialPlan.Pairs(set.Trials)}"),
            _ => "nothing broken",
        };
        page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{set.Runs.Length} runs with {what}; seed {set.Settings.Seed}; revision {set.Site.Description.Revision}, meaning {set.Site.MeaningHash}."));
        if (set.Settings.Faults == TrialFaults.Each)
        {
            page.Paragraph("The first run of each fault has the plant as described; the fault begins at a moment drawn from the times at which the piece is at work. It is one moment: at another the same fault may end otherwise.");
        }

        if (set.Trials.Tolerances.Length > 0 && (set.Settings.Faults != TrialFaults.Each || set.Runs.Length > set.Trials.Faults.Length))
        {
            List<string[]> rows = [];
            foreach (Tolerance tolerance in set.Trials.Tolerances)
            {
                rows.Add([tolerance.Place.Value, ToleranceFit.Written(tolerance.Low, tolerance.Unit).Text, ToleranceFit.Written(tolerance.High, tolerance.Unit).Text]);
            }

            page.Table(["quantity", "from", "to"], rows);
        }

        for (int index = 0; index < set.Bases.Length; index++)
        {
            RunSummary run = set.BaseSummaries[index];
            string unsafeWords = set.UnsafeWords(run);
            string how = run.End == RunEndKind.Came ? $"what it waits for comes at {DurationWords.Clock(run.BatchSeconds)}" : $"it lasts {DurationWords.Of(run.Seconds)}, then: {run.Final}";
            page.Paragraph($"Scenario `{set.Trials.Scenarios[index].Name}` as described: {how}{(unsafeWords.Length == 0 ? "" : $"; **{unsafeWords}**")}.");
        }

        foreach ((Plant.Yaml.Placed<string> fault, string reason) in set.Trials.Description.LeftOut)
        {
            page.Paragraph($"Left out: `{fault.Value}` ({reason}).");
        }
    }

    private static void Unsafe(MarkdownPage page, TrialSet set)
    {
        int[] found = [.. Enumerable.Range(0, set.Runs.Length).Where(run => set.UnsafeOf(set.Runs[run]) != UnsafeEnd.None).OrderBy(run => UnsafeEnds.Order(set.UnsafeOf(set.Runs[run])))];
        page.Heading(string.Create(CultureInfo.InvariantCulture, $"What ended unsafe: {found.Length} of {set.Runs.Length} runs"));
        if (found.Length == 0)
        {
            page.Paragraph("None, as far as a simulation can know.");
            return;
        }

        List<string[]> kinds = [];
        foreach (UnsafeEnd kind in Enum.GetValues<UnsafeEnd>().Where(kind => kind != UnsafeEnd.None && found.Any(run => set.UnsafeOf(set.Runs[run]).HasFlag(kind))))
        {
            kinds.Add([Words(kind), found.Count(run => set.UnsafeOf(set.Runs[run]).HasFlag(kind)).ToString(CultureInfo.InvariantCulture)]);
        }

        page.Table(["how", "runs"], kinds);
        if (set.Settings.Faults == TrialFaults.Each)
        {
            return;
        }

        List<string[]> rows = [];
        foreach (int run in found.Take(MostUnsafe))
        {
            TrialDraw draw = set.Plan.Draw(run + 1);
            string with = draw.Faults.IsEmpty ? "" : $" ({string.Join(" and ", draw.Faults.Select(fault => fault.Fault))})";
            rows.Add([$"{(run + 1).ToString(CultureInfo.InvariantCulture)}{with}", set.UnsafeWords(set.Runs[run]), set.Runs[run].Final]);
        }

        page.Table(["run", "what was unsafe", "how it ended"], rows);
        if (found.Length > MostUnsafe)
        {
            page.Paragraph(string.Create(CultureInfo.InvariantCulture, $"{found.Length - MostUnsafe} more are in `runs.parquet`."));
        }
    }

    private static string Words(UnsafeEnd kind) => kind switch
    {
        UnsafeEnd.RequirementBroken => "a requirement broken",
        UnsafeEnd.DoseLimitPassed => "more reagent than the program's limit",
        UnsafeEnd.OutsideConsent => "discharged outside the consent",
        UnsafeEnd.Overflow => "a tank ran over",
        UnsafeEnd.NoEnd => "no end: neither finished nor at rest",
        UnsafeEnd.ModelStopped => "the plant model stopped",
        _ => "could not be played",
    };

    private static void Faults(MarkdownPage page, TrialSet set)
    {
        page.Heading("What each fault came to");
        List<string[]> rows = [];
        List<(UnsafeEnd Unsafe, int Place, FaultRow Row)> told = [];
        foreach (IGrouping<string, (TrialDraw Draw, RunSummary Run)> fault in Enumerable.Range(1, set.Runs.Length)
            .Select(run => (Draw: set.Plan.Draw(run), Run: set.Runs[run - 1]))
            .GroupBy(run => string.Join(" and ", run.Draw.Faults.Select(drawn => drawn.Fault))))
        {
            (TrialDraw draw, RunSummary run) = fault.OrderBy(one => UnsafeEnds.Order(set.UnsafeOf(one.Run))).First();
            FaultRow row = FaultRow.Of(set, draw, run);
            int bad = fault.Count(one => set.UnsafeOf(one.Run) != UnsafeEnd.None);
            int all = fault.Count();
            told.Add((row.Unsafe, told.Count, all > 1 ? row with { Ended = string.Create(CultureInfo.InvariantCulture, $"{row.Ended} (worst of {all} runs, {bad} unsafe)") } : row));
        }

        foreach ((_, _, FaultRow row) in told.OrderBy(entry => UnsafeEnds.Order(entry.Unsafe)).ThenBy(entry => entry.Place))
        {
            rows.Add([row.Fault, row.At, row.Controller, row.Safe, row.Lost, row.Ended]);
        }

        page.Table(["fault", "begins at", "what the controller did", "time to a safe state", "lost", "how it ended"], rows);
    }

    private static void Distributions(MarkdownPage page, TrialSet set)
    {
        page.Heading("What came of all runs");
        List<string[]> rows = [];
        foreach (TrialOutcome outcome in TrialOutcome.All(set))
        {
            Distribution spread = new(outcome.Values);
            if (spread.Count > 0)
            {
                rows.Add(
                [
                    outcome.Title, outcome.Words(spread.Lowest), outcome.Words(spread.At(0.05)), outcome.Words(spread.Median), outcome.Words(spread.At(0.95)), outcome.Words(spread.Highest), spread.Without.ToString(CultureInfo.InvariantCulture),
                ]);
            }
        }

        page.Table(["outcome", "lowest", "5 % below", "median", "95 % below", "highest", "runs without it"], rows);
        page.Paragraph("Drawn in `distributions.svg` and `.png`.");
    }

    private static void Drivers(MarkdownPage page, TrialSet set)
    {
        Driver[] drivers = [.. Driver.Ranking(set)];
        if (drivers.Length == 0)
        {
            return;
        }

        page.Heading("What drives each outcome");
        page.Paragraph("Spearman's rank correlation over the runs, from -1 (falls with it) to 1 (rises with it); only what passes the size that nothing passes but in one of twenty sets by chance.");
        List<string[]> rows = [];
        foreach (Driver driver in drivers)
        {
            rows.Add([driver.Outcome, driver.Quantity, driver.Correlation.ToString("+0.00;-0.00", CultureInfo.InvariantCulture)]);
        }

        page.Table(["outcome", "driven by", "correlation"], rows);
        page.Paragraph("Drawn in `drivers.svg` and `.png`.");
    }

    private static void Expectations(MarkdownPage page, TrialSet set)
    {
        if (set.Settings.Faults != TrialFaults.None || set.Bases.Length != 1 || set.Bases[0].Expectations.IsEmpty)
        {
            return;
        }

        page.Heading("What the scenario expects, and how often it failed");
        List<string[]> rows = [];
        for (int index = 0; index < set.Bases[0].Expectations.Length; index++)
        {
            int failed = set.Runs.Count(run => index < run.Expectations.Length && !run.Expectations[index]);
            rows.Add([set.Bases[0].Expectations[index].Expected, failed == 0 ? "no run" : string.Create(CultureInfo.InvariantCulture, $"{failed} of {set.Runs.Length}")]);
        }

        page.Table(["expected", "failed in"], rows);
    }

    /// <summary>With nothing broken a unit that is held is worth as much as a figure: tolerances alone have done it.</summary>
    private static void Rests(MarkdownPage page, TrialSet set)
    {
        if (set.Settings.Faults != TrialFaults.None)
        {
            return;
        }

        List<string[]> rows =
        [
            .. RestRuns.Of(set).Select(rest => new[]
            {
                rest.What, rest.Alarm, rest.Runs.Length.ToString(CultureInfo.InvariantCulture), (rest.Runs[0] + 1).ToString(CultureInfo.InvariantCulture),
            }),
        ];
        if (rows.Count > 0)
        {
            page.Heading("Where a unit was held, stopped or aborted with nothing broken");
            page.Table(["what came first", "first alarm", "runs", "the first of them"], rows);
        }
    }

    private static void Worst(MarkdownPage page, IReadOnlyList<WorstRun> worst)
    {
        if (worst.Count == 0)
        {
            return;
        }

        page.Heading("Runs to look at\n\nCopy one into the site's folder `scenarios`; `sequencer simulate` then plays it again, with its record and trend.");
        List<string[]> rows = [];
        foreach (WorstRun run in worst)
        {
            rows.Add([$"`{run.File}`", run.Why]);
        }

        page.Table(["file", "why"], rows);
    }
}
