using Sequencer.Language.Units;

namespace Sequencer.Language.Programs;

/// <summary>
/// When the trigger possibly holds in scan k, the goal surely holds in some scan from k to k plus the
/// bound (<see cref="Scans"/>, or <see cref="Within"/>).
/// </summary>
public sealed record RequiredResponse(Condition Trigger, ResponseGoal Goal, Condition? GoalCondition, long? Scans, Duration Within) : RequiredFact;
