using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Scenarios;

/// <summary>Steps a system in a scenario, and writes down what its inputs were.</summary>
internal sealed class RecordedInputs : Stepper
{
    private readonly Interpreter _inner;
    private readonly TraceRecorder _recorder = new();

    private RecordedInputs(Interpreter inner)
        : base(inner.System, inner.ObservedExpressions) => _inner = inner;

    /// <summary>The inputs in each scan of a scenario that is played without the plant; null where it does not fit the site.</summary>
    public static Trace? Of(LoadedSite site, Scenario scenario, CancellationToken cancellation)
    {
        DiagnosticBag diagnostics = new();
        RecordedInputs stepper = new(new Interpreter(site.System, ClosedLoop.Observed(site.System, site.Metadata)));
        if (ScenarioFit.Join(site, stepper, scenario, diagnostics) is not { } loop || ScenarioRun.Bind(loop, scenario, diagnostics) is not { } run)
        {
            return null;
        }

        _ = run.Play(null, cancellation);
        return stepper._recorder.ToTrace();
    }

    public override void Step()
    {
        _recorder.Add(Inputs);
        Inputs.CopyTo(_inner.Inputs, 0);
        _inner.SetStates(States);
        _inner.Step();
        _inner.States.CopyTo(StateValues);
        _inner.Outputs.CopyTo(Outputs, 0);
        _inner.Observed.CopyTo(Observed, 0);
    }
}
