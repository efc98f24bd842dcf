using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// The output is demanded on or off while the step is active: from <see cref="After"/> its activation
/// (D), for <see cref="For"/> (L), while a condition surely holds, until another possibly held in this
/// activation.
/// </summary>
public sealed record DriveAction(
    Output Output,
    bool On,
    Duration After,
    Duration? For,
    Condition? While,
    Condition? Until,
    SourceSpan Span) : StepAction(Span);
