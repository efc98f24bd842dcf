using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A prompt was answered: so, or at all.</summary>
internal sealed record AnsweredExpression(WordSyntax Name, TextSyntax? Answer, TextSpan Span) : ExpressionSyntax(Span, 1);
