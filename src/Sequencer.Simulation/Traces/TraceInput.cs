using Sequencer.Control.TransitionSystems;

namespace Sequencer.Simulation.Traces;

/// <summary>An input of a system, and what it is at rest.</summary>
/// <param name="Variable">The input.</param>
/// <param name="Kind">What it is to a reader.</param>
/// <param name="Tag">What it belongs to: the switch, the reading, the output, the parameter, the prompt; else its own name.</param>
/// <param name="Rest">Switches not so, channels good, readings in the middle of their range, settings at their defaults, nothing pressed.</param>
/// <param name="IsMomentary">It is away from rest for a moment only.</param>
public sealed record TraceInput(Variable Variable, TraceInputKind Kind, string Tag, long Rest, bool IsMomentary)
{
    public string Name => Variable.Name;
}
