using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>confirm ZSO1, ZSC1 within 8 s else hold</c>.</summary>
internal sealed record ConfirmSyntax(
    WordSyntax On,
    WordSyntax? Off,
    AmountSyntax Within,
    WordSyntax? Reaction,
    TextSpan Span) : SyntaxNode(Span);
