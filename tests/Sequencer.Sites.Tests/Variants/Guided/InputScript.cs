using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// What the inputs of a site were in each scan of a scenario, played on its plant: a guided run goes through it first, and finds
/// its way into late steps.
/// </summary>
internal sealed class InputScript
{
    private readonly string[] _names;
    private readonly int[] _ends;
    private readonly (int Input, long Value)[] _changes;

    private InputScript(TransitionSystem system, Recorder recorder)
    {
        _names = [.. system.Inputs.Select(input => input.Name)];
        _ends = [.. recorder.Ends];
        _changes = [.. recorder.Changes];
    }

    public int Scans => _ends.Length;

    public static InputScript Of(LoadedSite site, Scenario scenario)
    {
        DiagnosticBag diagnostics = new();
        Recorder recorder = new(new CompiledStepper(site.System, ClosedLoop.Observed(site.System, site.Metadata)));
        ClosedLoop loop = ScenarioFit.Join(site, recorder, scenario, diagnostics) ?? throw Defect();
        _ = (ScenarioRun.Bind(loop, scenario, diagnostics) ?? throw Defect()).Play(null, CancellationToken.None);
        return new InputScript(site.System, recorder);

        InvalidOperationException Defect() => new(string.Join('\n', diagnostics.InOrder().Select(one => one.Message)));
    }

    /// <summary>The places of the script's inputs in a system; -1 for one that it has not.</summary>
    public int[] PlacesIn(TransitionSystem system)
    {
        ImmutableDictionary<string, int> places = system.Inputs.ToImmutableDictionary(input => input.Name, input => input.Index);
        return [.. _names.Select(name => places.GetValueOrDefault(name, -1))];
    }

    /// <summary>Gives the inputs what they have in a scan, from 0; scans come in order.</summary>
    public void Set(int scan, int[] places, long[] inputs)
    {
        for (int change = scan == 0 ? 0 : _ends[scan - 1]; change < _ends[scan]; change++)
        {
            (int input, long value) = _changes[change];
            if (places[input] >= 0)
            {
                inputs[places[input]] = value;
            }
        }
    }

    /// <summary>Steps another one and writes down which inputs changed.</summary>
    private sealed class Recorder(CompiledStepper inner) : Stepper(inner.System, inner.ObservedExpressions)
    {
        public List<int> Ends { get; } = [];

        public List<(int Input, long Value)> Changes { get; } = [];

        public override void Step()
        {
            for (int index = 0; index < Inputs.Length; index++)
            {
                if (Ends.Count == 0 || inner.Inputs[index] != Inputs[index])
                {
                    Changes.Add((index, Inputs[index]));
                }
            }

            Ends.Add(Changes.Count);
            Inputs.CopyTo(inner.Inputs, 0);
            inner.SetStates(States);
            inner.Step();
            inner.States.CopyTo(StateValues);
            inner.Outputs.CopyTo(Outputs, 0);
            inner.Observed.CopyTo(Observed, 0);
        }
    }
}
