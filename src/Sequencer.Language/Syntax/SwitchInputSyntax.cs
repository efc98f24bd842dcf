using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An input with a contact.</summary>
internal sealed record SwitchInputSyntax(
    WordSyntax Name,
    bool NormallyClosed,
    WordSyntax Address,
    TextSyntax Description,
    AmountSyntax? OnAfter,
    AmountSyntax? OffAfter,
    TextSpan Span) : DeclarationSyntax(Name, Span);
