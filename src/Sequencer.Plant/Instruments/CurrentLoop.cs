using System.Runtime.Intrinsics;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// The 4-20 mA signal of a transmitter by NAMUR NE 43: 3.8 to 20.5 mA measure, 3.6 mA and below or
/// 21.0 mA and above say that the transmitter or its wire has failed.
/// </summary>
internal static class CurrentLoop
{
    public const double Zero = 4.0;
    public const double Span = 16.0;
    public const double LowestMeasuring = 3.8;
    public const double HighestMeasuring = 20.5;

    /// <summary>What a transmitter that finds itself failed gives: inside the bands, with room for the card's tolerance.</summary>
    public const double FailedLow = 3.5;
    public const double FailedHigh = 21.5;

    public const double WireBreak = 0.0;

    /// <summary>A measuring transmitter's current; it stops at the ends of the measuring band.</summary>
    public static double Milliamps(double value, double low, double high) =>
        Math.Clamp(Zero + (Span * (value - low) / (high - low)), LowestMeasuring, HighestMeasuring);

    /// <summary>The same of several at once; <paramref name="span"/> is from the low to the high end of each.</summary>
    public static Vector256<double> Milliamps(Vector256<double> value, Vector256<double> low, Vector256<double> span) => Vector256.Clamp(
        Vector256.Create(Zero) + (Span * (value - low) / span), Vector256.Create(LowestMeasuring), Vector256.Create(HighestMeasuring));
}
