using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>rate = 12 L/h</c>: the parameter, the kind that its value is of, and the value as it is written.</summary>
internal sealed record ArgumentSyntax(WordSyntax Parameter, string Kind, WordSyntax Value, TextSpan Span) : SyntaxNode(Span);
