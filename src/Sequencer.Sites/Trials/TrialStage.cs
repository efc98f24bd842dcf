using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>Plays what is left of a trial set, keeps every run as it is done, and writes the results when all are.</summary>
internal static class TrialStage
{
    /// <summary>Why nothing can be done with this site or folder; null where it can.</summary>
    public static string? Refusal(LoadedSite site, TrialSettings settings, string results) =>
        site.Trials is null && site.Scenarios.All(scenario => !scenario.Inputs.IsEmpty) ? "the site has no scenario that is played on the plant, so there is nothing to try"
        : site.Trials is not { } trials ? settings.Faults == TrialFaults.None ? "the site has no file `trials.yaml` that says what is uncertain, so every run would be the same; write one (spec/trials.md), or ask for --faults each" : null
        : settings.Faults == TrialFaults.None && trials.Tolerances.IsEmpty && trials.Recipes.Length == 1 && trials.Description.Operator.IsEmpty
            ? "`trials.yaml` names no tolerance, recipe or operator, so every run would be the same; name some, or ask for --faults each"
        : string.IsNullOrWhiteSpace(results) ? "the folder for results has no name"
        : File.Exists(results) ? $"`{results}` is a file; results need a folder"
        : null;

    /// <param name="site">the site</param>
    /// <param name="settings">what was asked for</param>
    /// <param name="results">the folder that the journal is in</param>
    /// <param name="folder">where results go; null where only a part is played</param>
    /// <param name="diagnostics">of the site's trials</param>
    /// <param name="progress">where the set stands</param>
    /// <param name="cancellation">ends the set; what was done is kept</param>
    public static StageReport Run(
        LoadedSite site,
        TrialSettings settings,
        string results,
        OutputFolder? folder,
        DiagnosticBag diagnostics,
        IProgress<StageProgress> progress,
        CancellationToken cancellation)
    {
        SiteTrials? trials = site.Trials ?? TrialFit.Bind(site, new TrialDescription(new SourceText("trials.yaml", "")), diagnostics);
        if (trials is null)
        {
            return new StageReport("trials", Outcome.Fails, "nothing to try: the site has no scenario with a plant", [], new JsonObject());
        }

        int all = TrialPlan.RunsOf(trials, settings);
        int[] asked = [.. Enumerable.Range(1, all).Where(run => settings.Shard is not (int part, int of) || (run - 1) % of == part - 1)];
        string identity = Identity(site, trials, settings);
        SortedDictionary<int, RunSummary> done = TrialJournal.Read(results, identity);
        int[] missing = [.. asked.Where(run => !done.ContainsKey(run))];
        if (settings.MergeOnly && missing.Length > 0)
        {
            throw new OutputRefusedException(string.Create(
                CultureInfo.InvariantCulture,
                $"{missing.Length} of {all} runs are not there yet, the first of them run {missing[0]}; play the parts that are missing, or leave --merge out to play them here"));
        }

        if (settings.Shard is not null && missing.Length == 0)
        {
            return Part(settings, asked.Length, 0, all);
        }

        TrialExecution execution = new(site, trials, progress);
        ImmutableArray<ScenarioResult> bases = [.. Enumerable.Range(0, trials.Scenarios.Length).Select(scenario => execution.Base(scenario, cancellation))];
        ImmutableArray<FaultWindows> windows = [.. bases.Select(result => new FaultWindows(site.Plant, result.Record))];
        TrialPlan plan = new(trials, settings, windows);
        if (missing.Length > 0)
        {
            using TrialJournal journal = TrialJournal.Open(results, settings.Shard, identity);
            execution.Play(plan, windows, missing, settings.Threads, (run, summary) => Keep(journal, done, run, summary), cancellation);
        }

        if (settings.Shard is not null || folder is null)
        {
            return Part(settings, asked.Length, missing.Length, all);
        }

        ImmutableArray<RunSummary> summaries = [.. Enumerable.Range(0, trials.Scenarios.Length).Select(scenario => execution.BaseSummary(scenario, cancellation))];
        return Write(new TrialSet(site, trials, settings, plan, [.. asked.Select(run => done[run])], bases, summaries), folder);
    }

    private static void Keep(TrialJournal journal, SortedDictionary<int, RunSummary> done, int run, RunSummary summary)
    {
        journal.Add(run, summary);
        lock (done)
        {
            done[run] = summary;
        }
    }

    private static StageReport Part(TrialSettings settings, int asked, int played, int all)
    {
        (int part, int of) = settings.Shard ?? (1, 1);
        string headline = string.Create(CultureInfo.InvariantCulture, $"part {part} of {of}: {asked} of {all} runs are kept, {played} of them played now");
        return new StageReport("trials", Outcome.Holds, headline, ["the same command without --shard puts all parts together"], new JsonObject { ["runs"] = asked, ["played"] = played });
    }

    private static StageReport Write(TrialSet set, OutputFolder folder)
    {
        ImmutableArray<WorstRun> worst = WorstRun.Of(set);
        foreach (WorstRun run in worst)
        {
            folder.Keep(run.File, run.Text);
        }

        Pictures(set, folder);
        folder.Keep("runs.parquet", TrialTable.Write(set));
        folder.Keep("trials.md", TrialReport.Write(set, worst));
        int bad = set.Runs.Count(run => set.UnsafeOf(run) != UnsafeEnd.None);
        int failed = set.Runs.Count(run => run.Expectations.Any(came => !came));
        string headline = string.Create(CultureInfo.InvariantCulture, $"{set.Runs.Length} runs, {bad} ended unsafe")
            + (set.Settings.Faults == TrialFaults.None ? string.Create(CultureInfo.InvariantCulture, $", {failed} not as the scenario expects") : "");
        List<string> lines = [];
        foreach (int run in Enumerable.Range(0, set.Runs.Length).Where(run => set.UnsafeOf(set.Runs[run]) != UnsafeEnd.None).OrderBy(run => UnsafeEnds.Order(set.UnsafeOf(set.Runs[run]))).Take(MostLines))
        {
            string faults = string.Join(" and ", set.Plan.Draw(run + 1).Faults.Select(fault => fault.Fault));
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"unsafe    run {run + 1}{(faults.Length == 0 ? "" : $", {faults}")}: {set.UnsafeWords(set.Runs[run])}"));
        }

        if (bad > MostLines)
        {
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{bad - MostLines} more are in trials.md"));
        }

        return new StageReport("trials", bad + failed > 0 ? Outcome.Fails : Outcome.Holds, headline, lines, Json(set, bad, failed)) { Verdict = Verdict(set, bad, failed) };
    }

    private static string? Verdict(TrialSet set, int bad, int failed) => (bad, failed) switch
    {
        (0, 0) => null,
        (0, _) => string.Create(CultureInfo.InvariantCulture, $"NO RUN ENDED UNSAFE, BUT {failed} OF {set.Runs.Length} NOT AS THE SCENARIO EXPECTS"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{bad} OF {set.Runs.Length} RUNS ENDED UNSAFE"),
    };

    private const int MostLines = 20;

    private static void Pictures(TrialSet set, OutputFolder folder)
    {
        using EmbeddedFont font = new();
        string title = $"{set.Site.Description.Name}: {set.Site.Description.Title}";
        DistributionPanel[] panels =
        [
            .. TrialOutcome.All(set).Where(outcome => outcome.Varies)
                .Select(outcome => new DistributionPanel(outcome.Title, outcome.Unit, new Distribution(outcome.Values), outcome.Low, outcome.High)),
        ];
        if (panels.Length > 0)
        {
            string runs = string.Create(CultureInfo.InvariantCulture, $"{set.Runs.Length} runs, faults: {set.Settings.Faults.ToString().ToLowerInvariant()}, seed {set.Settings.Seed}");
            folder.Keep("distributions.svg", DistributionPicture.Svg(title, runs, panels, font));
            folder.Keep("distributions.png", DistributionPicture.Png(title, runs, panels, font));
        }

        DriverBar[] bars = [.. Driver.Ranking(set).Select(driver => new DriverBar(driver.Outcome, driver.Quantity, driver.Correlation))];
        if (bars.Length > 0)
        {
            folder.Keep("drivers.svg", DriverPicture.Svg(title, bars, font));
            folder.Keep("drivers.png", DriverPicture.Png(title, bars, font));
        }
    }

    private static JsonObject Json(TrialSet set, int bad, int failed) => new()
    {
        ["runs"] = set.Runs.Length,
        ["seed"] = set.Settings.Seed,
        ["faults"] = set.Settings.Faults.ToString().ToLowerInvariant(),
        ["unsafe"] = bad,
        ["not_as_expected"] = failed,
    };

    /// <summary>A hash of everything that a run's outcome depends on: a journal with another one is of other runs.</summary>
    private static string Identity(LoadedSite site, SiteTrials trials, TrialSettings settings)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{settings.Seed} {settings.Faults} {TrialPlan.RunsOf(trials, settings)}\n{site.MeaningHash}\n{site.PlantText.Content}\n{trials.Description.Text.Content}\n");
        foreach (Simulation.Scenarios.Scenario scenario in trials.Scenarios)
        {
            text.Append(Simulation.Scenarios.ScenarioText.Write(scenario));
        }

        foreach (Recipes.Recipe recipe in site.Recipes)
        {
            text.Append(recipe.Span.Source.Content);
        }

        foreach (DischargeLimit limit in site.Metadata.DischargeLimits)
        {
            text.Append(limit.Quantity).Append('\n');
        }

        foreach (Type part in (Type[])[typeof(TrialStage), typeof(ScenarioResult), typeof(PlantModel), typeof(Control.Execution.Stepper)])
        {
            text.Append(part.Module.ModuleVersionId).Append('\n');
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
