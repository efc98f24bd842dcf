using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A name, a unit or a keyword, as written.</summary>
internal sealed record WordSyntax(string Text, TextSpan Span) : SyntaxNode(Span);
