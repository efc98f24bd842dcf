using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>a + b</c> or <c>a - b</c>.</summary>
internal sealed record SumExpression(ExpressionSyntax Left, bool Subtract, ExpressionSyntax Right, TextSpan Span)
    : ExpressionSyntax(Span, Math.Max(Left.Depth, Right.Depth) + 1);
