using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A name, a unit or a keyword, as written; a name of another unit with its unit, <c>TK302.LT302</c>.</summary>
internal sealed record WordSyntax(string Text, TextSpan Span) : SyntaxNode(Span);
