using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>rises at most 0.2 m3/min while P101</c>.</summary>
internal sealed record RealRateSyntax(bool Rises, AmountSyntax Rate, ExpressionSyntax? While, TextSpan Span) : SyntaxNode(Span);
