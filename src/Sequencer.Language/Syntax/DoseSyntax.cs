using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A dose toward an end point.</summary>
internal sealed record DoseSyntax(
    WordSyntax Name,
    AmountSyntax Pulse,
    AmountSyntax? FinePulse,
    AmountSyntax? FineWithin,
    AmountSyntax Wait,
    WordSyntax Signal,
    ExpressionSyntax Target,
    AmountSyntax Maximum,
    WordSyntax? MaximumReaction,
    AmountSyntax NoResponseChange,
    NumberSyntax NoResponsePulses,
    WordSyntax? NoResponseReaction,
    TextSpan Span) : StepLineSyntax(Span);
