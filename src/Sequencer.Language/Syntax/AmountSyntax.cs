using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A number and perhaps its unit: <c>4.500 m3</c>.</summary>
internal sealed record AmountSyntax(NumberSyntax Number, WordSyntax? Unit, TextSpan Span) : ExpressionSyntax(Span, 1);
