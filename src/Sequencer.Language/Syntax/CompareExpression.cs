using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>a &gt;= b</c>.</summary>
internal sealed record CompareExpression(ExpressionSyntax Left, Comparison Comparison, ExpressionSyntax Right, TextSpan Span)
    : ExpressionSyntax(Span, Math.Max(Left.Depth, Right.Depth) + 1);
