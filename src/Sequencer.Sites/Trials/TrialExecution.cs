using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>
/// Plays runs of a set: every run has a fresh plant, and a controller that is as new but for what it has learnt about going quickly.
/// </summary>
internal sealed class TrialExecution(LoadedSite site, SiteTrials trials, IProgress<StageProgress> progress)
{
    private readonly ConcurrentBag<SpecialisingStepper> _idle = [];

    /// <summary>The run of a scenario with nothing changed, with its whole record.</summary>
    public ScenarioResult Base(int scenario, CancellationToken cancellation)
    {
        Scenario played = TrialPlan.AsDescribed(trials, scenario);
        progress.Report(new StageProgress("trials", $"{played.Name} as described"));
        return OnLoop(played, (loop, diagnostics) => ScenarioRun.Bind(loop, played, diagnostics)?.Play(null, cancellation))
            ?? throw new InvalidOperationException("the scenario fitted the site when it was loaded");
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

    private RunSummary Play(Scenario scenario, ImmutableHashSet<string> ordinary, double from, CancellationToken cancellation) =>
        OnLoop(scenario, (loop, diagnostics) => TrialRun.Play(loop, scenario, trials.Measures, ordinary, from, diagnostics, cancellation))
        ?? RunSummary.NotPlayable(trials.Measures);

    /// <summary>Null where the scenario does not fit the site.</summary>
    private T? OnLoop<T>(Scenario scenario, Func<ClosedLoop, DiagnosticBag, T?> play)
        where T : class
    {
        if (!_idle.TryTake(out SpecialisingStepper? stepper))
        {
            stepper = new SpecialisingStepper(site.System, ClosedLoop.Observed(site.System, site.Metadata));
        }

        stepper.Reset();
        DiagnosticBag diagnostics = new();
        Scenario onItsPlant = SiteLoader.OnItsPlant(scenario, site.PlantText, diagnostics);
        T? played = !diagnostics.HasErrors && ScenarioFit.Join(site, stepper, onItsPlant, diagnostics) is { } loop ? play(loop, diagnostics) : null;
        _idle.Add(stepper);
        return played;
    }
}
