using System.Collections.Immutable;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Summaries;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>
/// The whole pipeline: load and check, prove, simulate, export, sum up. Each command does a part of it
/// in the same order.
/// </summary>
public static class SiteCommands
{
    public static SiteResult Check(string site) => OnLoaded(site, null, (_, _) => []);

    /// <exception cref="OutputRefusedException">Results cannot go to the folder.</exception>
    public static SiteResult Prove(string site, string? output, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        OnLoaded(site, output, (loaded, run) => [ProofStage.Run(loaded, run.Folder, progress, cancellation)]);

    /// <param name="scenario">Only this one; null for all.</param>
    /// <exception cref="OutputRefusedException">Results cannot go to the folder.</exception>
    public static SiteResult Simulate(string site, string output, string? scenario, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        OnLoaded(site, output, (loaded, run) =>
        {
            ImmutableArray<Scenario> chosen = [.. InOrder(loaded).Where(one => scenario is null || one.Name == scenario)];
            if (scenario is not null && chosen.IsEmpty)
            {
                run.Refuse($"the site has no scenario `{scenario}`; it has {string.Join(", ", loaded.Scenarios.Select(one => $"`{one.Name}`"))}");
                return [];
            }

            return [SimulationStage.Run(loaded, chosen, run.NeededFolder, run.Diagnostics, progress, cancellation)];
        });

    /// <exception cref="OutputRefusedException">Results cannot go to the folder.</exception>
    public static SiteResult Export(string site, string output, CancellationToken cancellation) =>
        OnLoaded(site, output, (loaded, run) => [ExportStage.Run(loaded, run.NeededFolder, cancellation)]);

    /// <exception cref="OutputRefusedException">Results cannot go to the folder.</exception>
    public static SiteResult Verify(string site, string output, IProgress<StageProgress> progress, CancellationToken cancellation) =>
        OnLoaded(site, output, (loaded, run) =>
        {
            StageReport proof = ProofStage.Run(loaded, run.Folder, progress, cancellation);
            StageReport simulation = SimulationStage.Run(loaded, InOrder(loaded), run.NeededFolder, run.Diagnostics, progress, cancellation);
            StageReport export = ExportStage.Run(loaded, run.NeededFolder, cancellation);
            return [proof, simulation, export, HazardTable.Of(loaded, proof)];
        });

    /// <summary>The normal batch comes first, the others by name.</summary>
    private static ImmutableArray<Scenario> InOrder(LoadedSite site) =>
    [
        .. site.Scenarios.OrderBy(scenario => !scenario.Name.StartsWith("normal", StringComparison.OrdinalIgnoreCase))
            .ThenBy(scenario => scenario.Name, StringComparer.Ordinal),
    ];

    private static SiteResult OnLoaded(string site, string? output, Func<LoadedSite, CommandRun, IReadOnlyList<StageReport>> work)
    {
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

        CommandRun run = new(output is null ? null : OutputFolder.Open(output), diagnostics);
        IReadOnlyList<StageReport> stages = work(loaded, run);
        return run.Finish(loaded, [check, .. stages]);
    }
}
