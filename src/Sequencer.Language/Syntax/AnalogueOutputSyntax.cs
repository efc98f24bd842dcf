using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An output with a range.</summary>
internal sealed record AnalogueOutputSyntax(
    WordSyntax Name,
    NumberSyntax Minimum,
    NumberSyntax Maximum,
    WordSyntax Unit,
    WordSyntax Address,
    TextSyntax Description,
    AmountSyntax Safe,
    AmountSyntax? Emergency,
    RateSyntax? Rate,
    TextSpan Span) : DeclarationSyntax(Name, Span);
