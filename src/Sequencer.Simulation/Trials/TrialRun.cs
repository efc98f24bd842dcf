using System.Collections.Immutable;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Simulation.Trials;

/// <summary>Plays one run of a set and keeps nothing of it but its summary.</summary>
public static class TrialRun
{
    /// <summary>Null, with diagnostics, where the scenario does not fit the loop.</summary>
    /// <exception cref="OperationCanceledException">it was cancelled</exception>
    public static RunSummary? Play(
        ClosedLoop loop,
        Scenario scenario,
        TrialMeasures measures,
        ImmutableHashSet<string> ordinaryAlarms,
        double faultSeconds,
        DiagnosticBag diagnostics,
        CancellationToken cancellation)
    {
        if (ScenarioRun.Bind(loop, scenario, diagnostics) is not { } run)
        {
            return null;
        }

        TrialWatch watch = new(loop, measures, ordinaryAlarms, Awaited(scenario), faultSeconds);
        return watch.Finish(run.Play(watch, null, cancellation));
    }

    private static string? Awaited(Scenario scenario) => scenario.Until?.Event switch
    {
        Event.StateReached reached => reached.Unit,
        Event.StepActive active => active.Unit,
        _ => null,
    };
}
