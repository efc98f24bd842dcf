using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The output gives an amount once a batch: <see cref="Amount"/>, or, where <see cref="Of"/> is written, as
/// many times <see cref="Amount"/> as <see cref="Per"/> goes into it, at most <see cref="Maximum"/>. What it
/// has given counts every scan in which the output is on while the step is active, and is kept until the
/// next batch. Of a reading the value counts that it has when the dose begins; a total is followed, in
/// whole pulses of <see cref="Pulse"/>.
/// </summary>
public sealed record AmountDoseAction(
    Output Output,
    LiteralQuantity Amount,
    LiteralQuantity? Per,
    Quantity? Of,
    Units.Duration? Pulse,
    LiteralQuantity? Maximum,
    Reaction MaximumReaction,
    SourceSpan Span) : StepAction(Span);
