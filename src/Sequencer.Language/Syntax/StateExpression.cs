using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>unit is Held</c>, or of another unit <c>TK302 is Held</c>.</summary>
internal sealed record StateExpression(WordSyntax? Unit, WordSyntax State, TextSpan Span) : ExpressionSyntax(Span, 1);
