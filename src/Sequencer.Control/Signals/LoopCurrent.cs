using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Signals;

/// <summary>
/// What <see cref="AnalogueScaling"/> says, for a card that gives the loop's current in whole microamperes: exact, in integers.
/// 4000 is the range's minimum and 20000 its maximum.
/// </summary>
public static class LoopCurrent
{
    public const long RangeStart = 4_000;
    public const long RangeEnd = 20_000;
    public const long FailedLow = 3_600;
    public const long MeasuringLow = 3_800;
    public const long MeasuringHigh = 20_500;
    public const long FailedHigh = 21_000;

    private const long Span = RangeEnd - RangeStart;

    /// <summary>The reading nearest to a current, half a step upwards.</summary>
    /// <param name="microamperes">What the card gives.</param>
    /// <param name="range">The reading at 4 and at 20 mA.</param>
    public static long Reading(long microamperes, IntegerRange range) =>
        range.Minimum + ((((Math.Clamp(microamperes, RangeStart, RangeEnd) - RangeStart) * (range.Maximum - range.Minimum)) + (Span / 2)) / Span);

    /// <summary>Whether the loop has failed, by NAMUR NE 43; between the bands it stays as it was.</summary>
    public static bool HasFailed(long microamperes, bool before) =>
        microamperes is <= FailedLow or >= FailedHigh || (before && microamperes is < MeasuringLow or > MeasuringHigh);

    /// <summary>The current in microamperes nearest to a set value, half a step upwards.</summary>
    /// <param name="builder">Makes the expression.</param>
    /// <param name="setting">The set value, inside the range.</param>
    /// <param name="range">The set value at 4 and at 20 mA; more than one value.</param>
    public static Expression Of(ExpressionBuilder builder, Expression setting, IntegerRange range)
    {
        long steps = range.Maximum - range.Minimum;
        Expression above = builder.Scale(Span, builder.Subtract(setting, builder.Constant(range.Minimum)));
        Expression current = builder.Add(builder.Constant(RangeStart), new ConstantDivision(builder, builder.Add(above, builder.Constant(steps / 2)), steps).Quotient);
        return builder.Maximum(builder.Constant(RangeStart), builder.Minimum(current, builder.Constant(RangeEnd)));
    }
}
