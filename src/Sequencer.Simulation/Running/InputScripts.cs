using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Traces;

namespace Sequencer.Simulation.Running;

/// <summary>Binds the inputs that a scenario gives to those of the program.</summary>
internal static class InputScripts
{
    /// <summary>Far less than a scan: a time that is meant for a scan is not put into the next by rounding.</summary>
    private const double Tolerance = 1e-6;

    /// <summary>Null where the scenario is played on the plant, or, with diagnostics, where a name or value does not fit.</summary>
    public static InputScript? Bind(Scenario scenario, ClosedLoop loop, ScenarioNames names)
    {
        if (scenario.Inputs.IsEmpty)
        {
            return null;
        }

        double period = loop.System.ScanMilliseconds / 1000.0;
        List<(long Scan, int Input, long Value)> changes = [];
        foreach (InputValue given in scenario.Inputs.OrderBy(given => given.Seconds))
        {
            if (names.Input(given.Input, given.Span) is Variable input && names.Integer(input, given.Value, given.Span) is long value)
            {
                changes.Add(((long)Math.Ceiling((given.Seconds / period) - Tolerance), input.Index, value));
            }
        }

        ImmutableArray<long> rests = [.. TraceInputs.Of(loop.System, loop.Site).Select(input => input.Rest)];
        return new InputScript(rests, [.. changes]);
    }
}
