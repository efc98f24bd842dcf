using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Simulation.Tests.Tank;

internal static class TankRun
{
    public static SourceSpan Place { get; } = new SourceText("scenarios/test.yaml", "name: test\n").At(0, 4);

    public static Scenario Batch { get; } = new("normal-batch", "A batch from start to end", 1800, Place)
    {
        Actions = [new ScriptedAction(After(1), new Deed.Press("R101.start"), Place)],
        Until = new Moment(new Event.StateReached("R101", UnitState.Complete), 10, Place),
    };

    public static Moment After(double seconds) => new(new Event.Start(), seconds, Place);

    public static ScriptedAction At(double seconds, Deed deed) => new(After(seconds), deed, Place);

    public static ScriptedAction When(Event happening, Deed deed, double delay = 0) => new(new Moment(happening, delay, Place), deed, Place);

    public static ClosedLoop Loop(IPlant? plant = null, SiteMetadata? site = null)
    {
        DiagnosticBag diagnostics = new();
        ClosedLoop? loop = Join(plant ?? new TankPlant(), site ?? TankProgram.Site, diagnostics);
        Assert.Empty(diagnostics.InOrder());
        return loop ?? throw new InvalidOperationException("no loop and no diagnostic");
    }

    public static ClosedLoop? Join(IPlant plant, SiteMetadata site, DiagnosticBag diagnostics)
    {
        TransitionSystem system = TankProgram.System();
        return ClosedLoop.Join(new Interpreter(system, ClosedLoop.Observed(system, site)), plant, site, Place, diagnostics);
    }

    public static ScenarioResult Play(Scenario scenario, TankPlant? plant = null)
    {
        DiagnosticBag diagnostics = new();
        ScenarioRun? run = ScenarioRun.Bind(Loop(plant), scenario, diagnostics);
        Assert.Empty(diagnostics.InOrder());
        return run?.Play(null, CancellationToken.None) ?? throw new InvalidOperationException("no run and no diagnostic");
    }

    public static ImmutableArray<Diagnostic> Mistakes(Scenario scenario)
    {
        DiagnosticBag diagnostics = new();
        ScenarioRun? run = ScenarioRun.Bind(Loop(), scenario, diagnostics);
        Assert.Equal(diagnostics.HasErrors, run is null);
        return diagnostics.InOrder();
    }
}
