using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An alarm.</summary>
internal sealed record AlarmSyntax(
    WordSyntax Name,
    TextSyntax Message,
    ExpressionSyntax Condition,
    DelaysSyntax Delays,
    AmountSyntax? Deadband,
    StepNumbersSyntax? SuppressedAt,
    WordSyntax? Priority,
    TextSyntax? Consequence,
    RespondSyntax? Response,
    TextSpan Span) : DeclarationSyntax(Name, Span);
