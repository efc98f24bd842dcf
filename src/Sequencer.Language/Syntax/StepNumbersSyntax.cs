using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>Steps by their numbers: <c>10 and 20</c>.</summary>
internal sealed record StepNumbersSyntax(ImmutableArray<NumberSyntax> Numbers, TextSpan Span) : SyntaxNode(Span);
