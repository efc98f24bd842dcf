using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>No run reaches the goal: <see cref="Never"/> is the requirement that says so, and <see cref="Proof"/> its verdict.</summary>
public sealed record Unreachable(Goal Goal, Requirement Never, Holds Proof) : GoalVerdict(Goal);
