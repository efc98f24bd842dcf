using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A remembered fact.</summary>
internal sealed record LatchSyntax(
    WordSyntax Name,
    TextSyntax Description,
    ExpressionSyntax Set,
    ExpressionSyntax Clear,
    bool Retained,
    TextSpan Span) : DeclarationSyntax(Name, Span);
