using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>unit is Held</c>.</summary>
internal sealed record StateExpression(WordSyntax State, TextSpan Span) : ExpressionSyntax(Span, 1);
