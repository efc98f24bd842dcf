using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What stands in round brackets.</summary>
internal sealed record BracketExpression(ExpressionSyntax Inner, TextSpan Span) : ExpressionSyntax(Span, Inner.Depth + 1);
