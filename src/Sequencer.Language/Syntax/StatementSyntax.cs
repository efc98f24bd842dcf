using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>One whole logical line.</summary>
internal abstract record StatementSyntax(TextSpan Span) : SyntaxNode(Span);
