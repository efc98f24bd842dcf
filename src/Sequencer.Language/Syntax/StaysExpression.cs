using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>condition stays 20 s</c>, perhaps <c>after the last pulse</c>.</summary>
internal sealed record StaysExpression(ExpressionSyntax Inner, AmountSyntax Time, bool AfterLastPulse, TextSpan Span)
    : ExpressionSyntax(Span, Inner.Depth + 1);
