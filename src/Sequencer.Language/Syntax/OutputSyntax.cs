using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A valve or a motor.</summary>
internal sealed record OutputSyntax(
    WordSyntax Name,
    WordSyntax Kind,
    WordSyntax Address,
    TextSyntax Description,
    RestSyntax Safe,
    RestSyntax? Emergency,
    RestSyntax? Held,
    DrivenSyntax? Driven,
    WordSyntax? DeEnergised,
    ConfirmSyntax? Confirm,
    DeliversSyntax? Delivers,
    TextSpan Span) : DeclarationSyntax(Name, Span);
