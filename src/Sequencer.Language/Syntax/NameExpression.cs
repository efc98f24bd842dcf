using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A name, perhaps with what is asked of it: <c>P101</c>, <c>P101 proved</c>.</summary>
internal sealed record NameExpression(WordSyntax Name, WordSyntax? Aspect, TextSpan Span) : ExpressionSyntax(Span, 1);
