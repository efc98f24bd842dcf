using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>delivers CAUSTIC at 0.20 L/min</c>.</summary>
internal sealed record DeliversSyntax(WordSyntax Reagent, AmountSyntax Rate, TextSpan Span) : SyntaxNode(Span);
