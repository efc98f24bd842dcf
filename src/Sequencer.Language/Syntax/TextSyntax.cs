using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>Text in double quotes; <see cref="Text"/> is without them.</summary>
internal sealed record TextSyntax(string Text, TextSpan Span) : SyntaxNode(Span);
