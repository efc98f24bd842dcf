using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What a batch may change.</summary>
internal sealed record ParameterSyntax(
    WordSyntax Name,
    AmountSyntax Default,
    AmountSyntax Minimum,
    AmountSyntax Maximum,
    TextSyntax? Description,
    TextSpan Span) : DeclarationSyntax(Name, Span);
