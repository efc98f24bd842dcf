using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>60.0 mm when at step 30</c>, behind <c>set to</c>.</summary>
internal sealed record CountSetSyntax(AmountSyntax Value, ExpressionSyntax When, TextSpan Span) : SyntaxNode(Span);
