using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// A retained amount in whole multiples of <see cref="Resolution"/>, from <see cref="Minimum"/> to <see cref="Maximum"/>, where it
/// stays. Each time that <see cref="Each"/> surely comes about it changes by <see cref="Change"/>, which is negative where it takes.
/// While <see cref="SetWhen"/> surely holds it is <see cref="SetTo"/>. With <see cref="Window"/> only the last time counts.
/// </summary>
public sealed record Count(
    string Name,
    string Description,
    Unit Unit,
    Rational Resolution,
    long Minimum,
    long Maximum,
    EdgeFact Each,
    long Change,
    long SetTo,
    Condition? SetWhen,
    CountWindow? Window,
    SourceSpan Span)
{
    /// <summary>The value before anything was counted: nothing, or the end of the range that is nearest to it.</summary>
    public long Initial => Math.Clamp(0, Minimum, Maximum);

    /// <summary>The largest value it can show: over a time, each part of it may be full.</summary>
    public long Largest => Window is null ? Maximum : checked(Maximum * (Window.Parts + 1));
}
