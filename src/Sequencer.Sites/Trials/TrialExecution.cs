using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Execution;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>Plays runs of a set: its programs are compiled once, every run has a fresh controller and plant.</summary>
internal sealed class TrialExecution(LoadedSite site, SiteTrials trials, IProgress<StageProgress> progress)
{
    private readonly CompiledSystem _compiled = CompiledSystem.Compile(site.System, ClosedLoop.Observed(site.System, site.Metadata));

    /// <summary>The run of a scenario with nothing changed, with its whole record.</summary>
    public ScenarioResult Base(int scenario, CancellationToken cancellation)
    {
        Scenario played = TrialPlan.AsDescribed(trials, scenario);
        DiagnosticBag diagnostics = new();
        ClosedLoop? loop = Join(played, diagnostics);
        ScenarioRun? run = loop is null ? null : ScenarioRun.Bind(loop, played, diagnostics);
        progress.Report(new StageProgress("trials", $"{played.Name} as described"));
        return run?.Play(null, cancellation) ?? throw new InvalidOperationException("the scenario fitted the site when it was loaded");
    }

    /// <summary>The same run, of which only the summary is kept.</summary>
    public RunSummary BaseSummary(int scenario, CancellationToken cancellation) =>
        Play(TrialPlan.AsDescribed(trials, scenario), [], 0, cancellation);

    /// <summary>Plays runs on so many threads and gives each to <paramref name="done"/> when it ends.</summary>
    public void Play(
        TrialPlan plan, ImmutableArray<FaultWindows> windows, IReadOnlyList<int> runs, int threads, Action<int, RunSummary> done, CancellationToken cancellation)
    {
        int finished = 0;
        ParallelOptions options = new() { MaxDegreeOfParallelism = threads, CancellationToken = cancellation };
        ImmutableArray<ImmutableHashSet<string>> ordinary = [.. windows.Select(window => window.OrdinaryAlarms)];
        Parallel.ForEach(Partitioner.Create(runs, EnumerablePartitionerOptions.NoBuffering), options, run =>
        {
            TrialDraw draw = plan.Draw(run);
            int scenario = trials.Scenarios.TakeWhile(candidate => candidate.Name != draw.Base).Count();
            double from = draw.Faults.IsEmpty ? 0 : draw.Faults.Min(fault => fault.Seconds);
            done(run, Play(draw.Scenario, ordinary[scenario], from, cancellation));
            progress.Report(new StageProgress("trials", string.Create(CultureInfo.InvariantCulture, $"{Interlocked.Increment(ref finished)} of {runs.Count} runs")));
        });
    }

    private RunSummary Play(Scenario scenario, ImmutableHashSet<string> ordinary, double from, CancellationToken cancellation)
    {
        DiagnosticBag diagnostics = new();
        return Join(scenario, diagnostics) is { } loop && TrialRun.Play(loop, scenario, trials.Measures, ordinary, from, diagnostics, cancellation) is { } summary
            ? summary
            : RunSummary.NotPlayable(trials.Measures);
    }

    private ClosedLoop? Join(Scenario scenario, DiagnosticBag diagnostics)
    {
        Scenario onItsPlant = SiteLoader.OnItsPlant(scenario, site.PlantText, diagnostics);
        return diagnostics.HasErrors ? null : ScenarioFit.Join(site, new CompiledStepper(_compiled), onItsPlant, diagnostics);
    }
}
