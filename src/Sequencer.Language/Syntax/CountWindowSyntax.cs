using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>24 h in 24 parts</c>, behind <c>over</c>.</summary>
internal sealed record CountWindowSyntax(AmountSyntax Time, NumberSyntax Parts, TextSpan Span) : SyntaxNode(Span);
