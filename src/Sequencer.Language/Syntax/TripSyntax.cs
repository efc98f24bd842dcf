using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A trip.</summary>
internal sealed record TripSyntax(
    WordSyntax Name,
    TextSyntax Title,
    ExpressionSyntax Condition,
    DelaysSyntax Delays,
    WordSyntax Reaction,
    WordSyntax? IfBad,
    WordSyntax? Group,
    TextSpan Span) : DeclarationSyntax(Name, Span);
