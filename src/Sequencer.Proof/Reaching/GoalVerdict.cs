using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>Whether some run that keeps the assumptions brings about a goal: <see cref="Reached"/>, <see cref="Unreachable"/> or <see cref="NotFound"/>.</summary>
public abstract record GoalVerdict(Goal Goal);
