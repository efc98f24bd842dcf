using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What an output is when nobody demands it; <see cref="Position"/> may be <c>last</c>.</summary>
internal sealed record RestSyntax(
    WordSyntax Position,
    ExpressionSyntax? While,
    WordSyntax? Else,
    WordSyntax? IfBad,
    TextSpan Span) : SyntaxNode(Span);
