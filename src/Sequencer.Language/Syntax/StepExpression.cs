using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>at step 20</c>.</summary>
internal sealed record StepExpression(NumberSyntax Step, TextSpan Span) : ExpressionSyntax(Span, 1);
