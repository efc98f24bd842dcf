using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A remembered amount that changes by a fixed step each time that something comes about.</summary>
internal sealed record CountSyntax(
    WordSyntax Name,
    TextSyntax Description,
    NumberSyntax Minimum,
    NumberSyntax Maximum,
    WordSyntax Unit,
    ExpressionSyntax Each,
    WordSyntax Verb,
    AmountSyntax Amount,
    CountSetSyntax? Set,
    CountWindowSyntax? Window,
    TextSpan Span) : DeclarationSyntax(Name, Span);
