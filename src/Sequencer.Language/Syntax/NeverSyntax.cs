using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>never X</c>.</summary>
internal sealed record NeverSyntax(ExpressionSyntax Condition, TextSpan Span) : RequirementSyntax(Span);
