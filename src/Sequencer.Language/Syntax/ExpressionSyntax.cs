using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A condition or an amount: which of the two is settled when names are bound. <see cref="Depth"/> is the height of the tree.</summary>
internal abstract record ExpressionSyntax(TextSpan Span, int Depth) : SyntaxNode(Span);
