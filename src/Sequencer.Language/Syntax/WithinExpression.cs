using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>value within lower .. upper</c>.</summary>
internal sealed record WithinExpression(ExpressionSyntax Value, ExpressionSyntax Lower, ExpressionSyntax Upper, TextSpan Span)
    : ExpressionSyntax(Span, Math.Max(Value.Depth, Math.Max(Lower.Depth, Upper.Depth)) + 1);
