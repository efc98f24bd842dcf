using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>A run of the whole system from its initial state, replayed, in whose last scan the goal is reached for the first time.</summary>
/// <param name="Goal">The goal.</param>
/// <param name="Way">The shortest run found; not claimed to be the shortest there is.</param>
public sealed record Reached(Goal Goal, Trace Way) : GoalVerdict(Goal);
