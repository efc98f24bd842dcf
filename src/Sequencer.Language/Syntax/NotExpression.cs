using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>not</c> and what it denies.</summary>
internal sealed record NotExpression(ExpressionSyntax Inner, TextSpan Span) : ExpressionSyntax(Span, Inner.Depth + 1);
