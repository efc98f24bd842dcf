using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// From the entry of the step the analogue output goes evenly from <see cref="From"/> to <see cref="To"/> (steps of its
/// resolution) in <see cref="Time"/>, counted while Running, and stays there while the step is active.
/// </summary>
public sealed record RampAction(AnalogueOutput Output, long From, long To, Duration Time, SourceSpan Span) : StepAction(Span)
{
    /// <summary>
    /// What each scan adds: <c>Whole</c> steps, and one more whenever <c>Remainder</c> a scan has filled <c>Scans</c>. After
    /// that many scans the whole way is gone, without a division and without a rounding that adds up.
    /// </summary>
    public (long Scans, long Whole, long Remainder) Pace(int scanMilliseconds)
    {
        long scans = Time.Scans(scanMilliseconds);
        long way = Math.Abs(To - From);
        return (scans, way / scans, way % scans);
    }
}
