using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A trip.</summary>
internal sealed record TripSyntax(
    WordSyntax Name,
    TextSyntax Title,
    ExpressionSyntax Condition,
    WordSyntax Reaction,
    WordSyntax? IfBad,
    TextSpan Span) : DeclarationSyntax(Name, Span);
