using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>So much in so long.</summary>
internal sealed record RateSyntax(AmountSyntax Change, AmountSyntax Time, TextSpan Span) : SyntaxNode(Span);
