using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Export.Equivalence;
using Sequencer.Plant.Response;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Insight;
using Sequencer.Sites.Mending;
using Sequencer.Sites.Proposing;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Summaries;
using Sequencer.Sites.Trials;
using Sequencer.Sites.Tuning;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>
/// The whole pipeline: load and check, prove, simulate, export, sum up. Each command does a part of it
/// in the same order.
/// </summary>
public static class SiteCommands
{
    public static SiteResult Check(string site) => OnLoaded(site, null, (_, _) => []);

    /// <summary>Checks, puts every fix that is offered into the site's files, and checks again.</summary>
    public static SiteResult Mend(string site)
    {
        SiteResult first = Check(site);
        if (first.Outcome == Outcome.NotDone)
        {
            return first;
        }

        SiteMending mending = SiteMending.Apply(new SiteFolder(site), first.Diagnostics);
        if (mending.Failure is { } failure)
        {
            return CommandRun.NotDone(mending.Files.IsEmpty ? failure : $"{failure}; mended before that: {string.Join(", ", mending.Files)}");
        }

        SiteResult again = Check(site);
        JsonObject json = JsonNode.Parse(again.Json)?.AsObject() ?? throw new InvalidOperationException("a result is one JSON object");
        json["mended"] = mending.Json;
        return again with { Before = mending.Text + "\n", Json = Summary.Print(json), Files = mending.Files };
    }

    public static SiteResult Prove(string site, string? output, ProofSettings settings, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        OnLoaded(
            site,
            output,
            (loaded, run) =>
            {
                Task<ImmutableArray<GoalVerdict>>? ways = settings.Obligations ? ObligationStage.SearchForWays(loaded, settings, progress, cancellation) : null;
                StageReport proof = ProofStage.Run(loaded, settings, run.Folder, progress, cancellation, out ImmutableArray<Verdict> verdicts);
                List<StageReport> reports = [proof];
                ImmutableArray<Verdict> owed = [];
                if (ways is not null)
                {
                    reports.Add(ObligationStage.Run(loaded, settings, ways, run.Folder, progress, cancellation, out owed));
                }

                if (settings.Propose)
                {
                    reports.Add(ProposalStage.Run(loaded, [.. verdicts, .. owed], ways?.Result ?? [], settings, run.Folder, progress, cancellation));
                }

                if (settings.Insight)
                {
                    reports.Add(InsightStage.Run(loaded, verdicts, ways?.Result ?? [], run.Folder, progress, cancellation));
                }

                return reports;
            },
            loaded => settings.Only.FirstOrDefault(name => !IsAnything(loaded, name)) is { } unknown ? NoSuchRequirement(loaded, unknown) : null);

    /// <param name="scenario">Only this one; null for all.</param>
    public static SiteResult Simulate(string site, string output, string? scenario, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        OnLoaded(
            site,
            output,
            (loaded, run) => [SimulationStage.Run(loaded, Chosen(loaded, scenario), run.NeededFolder, run.Diagnostics, progress, cancellation)],
            loaded => scenario is not null && Chosen(loaded, scenario).IsEmpty ? NoSuchScenario(loaded, scenario) : null);

    /// <summary>Thousands of simulated runs; what was done before in the same folder is not done again.</summary>
    /// <param name="site">The site's folder.</param>
    /// <param name="output">Where results and the journal of the runs go.</param>
    /// <param name="settings">Which runs.</param>
    /// <param name="progress">Where the set stands.</param>
    /// <param name="cancellation">Ends the set; what was done is kept.</param>
    public static SiteResult Trials(string site, string output, TrialSettings settings, IProgress<StageProgress> progress, CancellationToken cancellation) => OnLoaded(
        site,
        settings.Shard is null ? output : null,
        (loaded, run) => [TrialStage.Run(loaded, settings, output, run.Folder, run.Diagnostics, progress, cancellation)],
        loaded => TrialStage.Refusal(loaded, settings, output));

    /// <param name="site">The site's folder.</param>
    /// <param name="output">Where the text, its lists and certificates go.</param>
    /// <param name="settings">The forms that the text has.</param>
    /// <param name="cancellation">Makes what is left undecided.</param>
    public static SiteResult Export(string site, string output, ExportSettings settings, CancellationToken cancellation) => OnLoaded(
        site,
        output,
        (loaded, run) => [ExportStage.Run(loaded, settings, run.NeededFolder, cancellation)],
        loaded => ExportStage.Refusal(loaded, settings.Dialect));

    /// <summary>Structured text that somebody edited by hand, against the site's programs.</summary>
    /// <param name="site">The site's folder.</param>
    /// <param name="file">The edited text.</param>
    /// <param name="forms">The forms that it had before it was edited.</param>
    /// <param name="output">Where certificate and summary go; null for nowhere.</param>
    /// <param name="settings">Where ways to steps and transitions are kept that earlier runs found.</param>
    /// <param name="cancellation">Makes what is left undecided.</param>
    public static SiteResult Compare(
        string site, string file, ExportSettings forms, string? output, ProofSettings settings, CancellationToken cancellation)
    {
        ReadText? read = null;
        return OnLoaded(
            site,
            output,
            (loaded, run) => [ComparisonStage.Run(loaded, forms.Dialect, read ?? throw new InvalidOperationException("nothing was read"), run.Folder, settings.Memory, cancellation)],
            loaded =>
            {
                if (ExportStage.Refusal(loaded, forms.Dialect) is { } refusal)
                {
                    return refusal;
                }

                read = ComparisonStage.Read(loaded, forms.Dialect, file, cancellation, out string reason);
                return read is null ? reason : null;
            });
    }

    /// <summary>Settings of doses from a recorded trend, as a change to review; the site stays as it is.</summary>
    /// <param name="site">The site's folder.</param>
    /// <param name="file">The trend.</param>
    /// <param name="output">Where pictures and the change go; null for nowhere.</param>
    public static SiteResult Tune(string site, string file, string? output)
    {
        TrendTable? trend = null;
        return OnLoaded(
            site,
            output,
            (loaded, run) => [TuneStage.Run(loaded, trend ?? throw new InvalidOperationException("nothing was read"), run.Folder)],
            loaded =>
            {
                trend = TuneStage.Read(loaded, file, out string reason);
                return trend is null ? reason : null;
            });
    }

    public static SiteResult Verify(
        string site, string output, ExportSettings forms, ProofSettings settings, IProgress<StageProgress> progress, CancellationToken cancellation) => OnLoaded(
        site,
        output,
        (loaded, run) =>
        {
            Task<ImmutableArray<GoalVerdict>> ways = ObligationStage.SearchForWays(loaded, settings, progress, cancellation);
            StageReport proof = ProofStage.Run(loaded, settings, run.Folder, progress, cancellation, out _);
            StageReport owed = ObligationStage.Run(loaded, settings, ways, run.Folder, progress, cancellation, out _);
            StageReport simulation = SimulationStage.Run(loaded, InOrder(loaded), run.NeededFolder, run.Diagnostics, progress, cancellation);
            StageReport export = ExportStage.Run(loaded, forms, run.NeededFolder, cancellation);
            return [proof, owed, simulation, export, HazardTable.Of(loaded, proof)];
        },
        loaded => ExportStage.Refusal(loaded, forms.Dialect));

    /// <summary>The normal batch comes first, the others by name.</summary>
    internal static ImmutableArray<Scenario> InOrder(LoadedSite site) =>
    [
        .. site.Scenarios.OrderBy(scenario => !scenario.Name.StartsWith("normal", StringComparison.OrdinalIgnoreCase))
            .ThenBy(scenario => scenario.Name, StringComparer.Ordinal),
    ];

    private static ImmutableArray<Scenario> Chosen(LoadedSite site, string? name) =>
        [.. InOrder(site).Where(scenario => name is null || scenario.Name == name || FileNames.Of(scenario.Name) == name)];

    private static bool IsAnything(LoadedSite site, string name) =>
        site.ProofSystem.Requirements.Select(requirement => requirement.Name).Concat(site.ProofSystem.Goals.Select(goal => goal.Name))
            .Any(known => ProofStage.IsMeant(known, name));

    private static string NoSuchRequirement(LoadedSite site, string name)
    {
        string[] known = [.. site.ProofSystem.Requirements.Select(requirement => requirement.Name).Concat(site.ProofSystem.Goals.Select(goal => goal.Name))];
        string meant = NearestWord.Find(name, known) is { } near ? $"; did you mean `{near}`?" : "";
        return $"the site has no requirement, step or transition `{name}`, and none whose name begins with `{name}.`{meant}";
    }

    private static string NoSuchScenario(LoadedSite site, string name) => site.Scenarios.IsEmpty
        ? $"the site has no scenario at all, so none named `{name}`; scenarios are files in its folder `scenarios`"
        : $"the site has no scenario `{name}`; it has {string.Join(", ", InOrder(site).Select(one => $"`{one.Name}`"))}";

    private static SiteResult OnLoaded(
        string site,
        string? output,
        Func<LoadedSite, CommandRun, IReadOnlyList<StageReport>> work,
        Func<LoadedSite, string?>? refuse = null)
    {
        if (string.IsNullOrWhiteSpace(site))
        {
            return CommandRun.NotDone("the site's folder has no name");
        }

        SiteFolder folder = new(site);
        if (!folder.Exists)
        {
            return CommandRun.NotDone(File.Exists(site)
                ? $"`{site}` is a file; name the site's folder, the one with {SiteLoader.DescriptionName} in it"
                : $"there is no folder `{site}`");
        }

        DiagnosticBag diagnostics = new();
        LoadedSite? loaded = SiteLoader.Load(folder, diagnostics);
        StageReport check = CheckStage.Report(diagnostics.InOrder(), loaded);
        if (loaded is null)
        {
            return CommandRun.Mistaken(check, diagnostics.InOrder());
        }

        if (refuse?.Invoke(loaded) is { } reason)
        {
            return CommandRun.NotDone(reason);
        }

        try
        {
            CommandRun run = new(output is null ? null : OutputFolder.Open(output), diagnostics);
            return run.Finish(loaded, [check, .. work(loaded, run)]);
        }
        catch (OutputRefusedException refused)
        {
            return CommandRun.NotDone(refused.Message);
        }
    }
}
