using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What an output delivered in this batch: <c>P201.total</c>.</summary>
internal sealed record TotalExpression(WordSyntax Name, TextSpan Span) : ExpressionSyntax(Span, 1);
