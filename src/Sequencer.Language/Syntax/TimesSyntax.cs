using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>How often a way may be taken in a batch, and what follows when it is wanted once more.</summary>
internal sealed record TimesSyntax(NumberSyntax Most, WordSyntax Reaction, TextSyntax Message, TextSpan Span) : SyntaxNode(Span);
