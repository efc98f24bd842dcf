using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>Neither a run that reaches the goal nor a proof that there is none.</summary>
public sealed record NotFound(Goal Goal, string Words) : GoalVerdict(Goal);
