using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>always X while Y</c>.</summary>
internal sealed record AlwaysSyntax(ExpressionSyntax Condition, ExpressionSyntax? While, TextSpan Span) : RequirementSyntax(Span);
