using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>response "close the inlet" within 10 min</c>.</summary>
internal sealed record RespondSyntax(TextSyntax Response, AmountSyntax Within, TextSpan Span) : SyntaxNode(Span);
