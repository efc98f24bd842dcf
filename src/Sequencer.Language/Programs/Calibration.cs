using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// An operator with the role may put a value in place of a reading, for <see cref="AtMost"/> at a time, while the unit is Idle.
/// </summary>
public sealed record Calibration(AnalogueInput Input, Duration AtMost, string Role, string Reason, SourceSpan Span)
{
    public string IsActiveInWords() => $"{Input.Tag} is being calibrated, for at most {AtMost}: {Reason}";

    public string HasExpiredInWords() => $"The calibration of {Input.Tag} has ended after {AtMost}: the reading counts again";

    public string IsRefusedInWords() => $"Calibration of {Input.Tag} refused: role {Role} is not there, another is going on, or the unit is not Idle";
}
