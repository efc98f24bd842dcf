using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>A comparison of two values that grow evenly from scan to scan: how long its outcome stays can be told at once.</summary>
/// <param name="Kind">Equal, less, or less or equal.</param>
/// <param name="First">Register of the first value.</param>
/// <param name="Second">Register of the second value.</param>
/// <param name="Closing">By how much more the first grows in a scan than the second.</param>
/// <param name="Outcome">What the comparison comes to now.</param>
internal readonly record struct Deadline(ExpressionKind Kind, int First, int Second, long Closing, bool Outcome)
{
    /// <summary>How many scans from the one on whose values are in the registers, that one counted, the outcome stays.</summary>
    public long Scans(long[] registers)
    {
        long apart = registers[First] - registers[Second];
        if (Closing == 0)
        {
            return long.MaxValue;
        }

        return (Kind, Outcome) switch
        {
            (ExpressionKind.Less, true) => Closing < 0 ? long.MaxValue : RoundedUp(-apart, Closing),
            (ExpressionKind.Less, false) => Closing > 0 ? long.MaxValue : (apart / -Closing) + 1,
            (ExpressionKind.LessOrEqual, true) => Closing < 0 ? long.MaxValue : (-apart / Closing) + 1,
            (ExpressionKind.LessOrEqual, false) => Closing > 0 ? long.MaxValue : RoundedUp(apart, -Closing),
            (ExpressionKind.Equal, true) => 1,
            (ExpressionKind.Equal, false) => -apart % Closing == 0 && -apart / Closing > 0 ? -apart / Closing : long.MaxValue,
            _ => throw new UnreachableException($"no comparison: {Kind}"),
        };
    }

    private static long RoundedUp(long whole, long part) => (whole + part - 1) / part;
}
