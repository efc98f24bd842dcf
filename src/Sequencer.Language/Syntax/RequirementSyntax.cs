using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>The fact that a requirement asks for.</summary>
internal abstract record RequirementSyntax(TextSpan Span) : SyntaxNode(Span);
