using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A piece of one logical line; <see cref="Span"/> counts from the start of that line, so that a line keeps its tree wherever it moves.</summary>
internal abstract record SyntaxNode(TextSpan Span);
