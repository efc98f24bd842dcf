using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>at step 20</c>, or of another unit <c>TK302 at step 20</c>.</summary>
internal sealed record StepExpression(WordSyntax? Unit, NumberSyntax Step, TextSpan Span) : ExpressionSyntax(Span, 1);
