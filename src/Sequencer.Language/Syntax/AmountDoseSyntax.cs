using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A dose by amount: a fixed one, or so much for each <see cref="Per"/> of <see cref="Of"/>.</summary>
internal sealed record AmountDoseSyntax(
    WordSyntax Name,
    AmountSyntax Amount,
    WordSyntax? Per,
    ExpressionSyntax? Of,
    AmountSyntax? Pulse,
    AmountSyntax? Maximum,
    WordSyntax? MaximumReaction,
    TextSpan Span) : StepLineSyntax(Span);
