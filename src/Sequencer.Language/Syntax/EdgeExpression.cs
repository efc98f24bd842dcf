using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>rising</c> or <c>falling</c> and what changes.</summary>
internal sealed record EdgeExpression(bool Rising, ExpressionSyntax Inner, TextSpan Span) : ExpressionSyntax(Span, Inner.Depth + 1);
