using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>after X Y within 2 s</c>; the bound is a time, or scans where it has no unit.</summary>
internal sealed record ResponseSyntax(
    ExpressionSyntax Trigger,
    ResponseGoal Goal,
    ExpressionSyntax? GoalCondition,
    AmountSyntax Bound,
    TextSpan Span) : RequirementSyntax(Span);
