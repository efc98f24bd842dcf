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
    SourceSpan Span) : StepAction(Span)
{
    /// <summary><see cref="For"/> is all that a batch gets of it, however often the step is entered.</summary>
    public bool OnceABatch { get; init; }

    /// <summary>Acts from the activation on, though the step may still wait for what it claims.</summary>
    public bool AtOnce { get; init; }

    /// <summary>On for <see cref="For"/> from each of these edges, not from the activation.</summary>
    public EdgeFact? AtEach { get; init; }

    /// <summary>From the activation to the end of what is counted from it.</summary>
    public long ScansFromActivation(int scanMilliseconds) =>
        After.Scans(scanMilliseconds) + (OnceABatch || AtEach is not null ? 0 : For?.Scans(scanMilliseconds) ?? 0);
}
