using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Wait, measure, pulse, again: while the reading is surely short of the target (on the side from which
/// the reagent moves it), the output runs for <see cref="Pulse"/> (or <see cref="FinePulse"/> within
/// <see cref="FineWithin"/> of the target), then rests for <see cref="Wait"/>. Begins with a wait.
/// The batch total stops at <see cref="Maximum"/>; after <see cref="NoResponsePulses"/> pulses that
/// moved the reading by less than <see cref="NoResponseChange"/> the dose ends likewise.
/// </summary>
public sealed record DoseAction(
    Output Output,
    AnalogueInput Signal,
    Quantity Target,
    Duration Pulse,
    Duration? FinePulse,
    Quantity? FineWithin,
    Duration Wait,
    Quantity Maximum,
    Reaction MaximumReaction,
    Quantity NoResponseChange,
    int NoResponsePulses,
    Reaction NoResponseReaction,
    SourceSpan Span) : StepAction(Span);
