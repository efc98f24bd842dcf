using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Signals;

/// <summary>
/// One 4-20 mA channel of an input card: the only place where the plant's doubles become the
/// controller's integers. 4 mA is the range's minimum and 20 mA its maximum, to the nearest integer,
/// clamped to the range. Quality follows NAMUR NE 43: measuring from 3.8 to 20.5 mA, failed at
/// 3.6 mA and below or 21.0 mA and above; between those bands the last quality is kept. A channel
/// that has not yet measured counts as failed.
/// </summary>
public struct AnalogueScaling : IEquatable<AnalogueScaling>
{
    public const double RangeStartMilliamps = LoopCurrent.RangeStart / MicroamperesPerMilliamp;
    public const double RangeEndMilliamps = LoopCurrent.RangeEnd / MicroamperesPerMilliamp;
    public const double FailedLowMilliamps = LoopCurrent.FailedLow / MicroamperesPerMilliamp;
    public const double MeasuringLowMilliamps = LoopCurrent.MeasuringLow / MicroamperesPerMilliamp;
    public const double MeasuringHighMilliamps = LoopCurrent.MeasuringHigh / MicroamperesPerMilliamp;
    public const double FailedHighMilliamps = LoopCurrent.FailedHigh / MicroamperesPerMilliamp;

    private const double MicroamperesPerMilliamp = 1000.0;

    private readonly IntegerRange _range;
    private bool _measuring;

    public AnalogueScaling(IntegerRange range)
    {
        _range = range;
        Value = range.Minimum;
    }

    /// <summary>The reading in steps of the input's resolution, inside the input's range.</summary>
    public long Value { get; private set; }

    /// <summary>The channel is bad now.</summary>
    public readonly bool Fault => !_measuring;

    /// <summary>Takes the loop current of this scan; a current that is not a number is a failed channel.</summary>
    public void Read(double milliamps)
    {
        if (milliamps is >= MeasuringLowMilliamps and <= MeasuringHighMilliamps)
        {
            _measuring = true;
        }
        else if (double.IsNaN(milliamps) || milliamps <= FailedLowMilliamps || milliamps >= FailedHighMilliamps)
        {
            _measuring = false;
        }

        Value = ToInteger(milliamps);
    }

    public readonly bool Equals(AnalogueScaling other) =>
        _range == other._range && _measuring == other._measuring && Value == other.Value;

    public override readonly bool Equals(object? obj) => obj is AnalogueScaling other && Equals(other);

    public override readonly int GetHashCode() => HashCode.Combine(_range, _measuring, Value);

    public static bool operator ==(AnalogueScaling left, AnalogueScaling right) => left.Equals(right);

    public static bool operator !=(AnalogueScaling left, AnalogueScaling right) => !left.Equals(right);

    private readonly long ToInteger(double milliamps)
    {
        double fraction = (milliamps - RangeStartMilliamps) / (RangeEndMilliamps - RangeStartMilliamps);
        if (!(fraction > 0))
        {
            return _range.Minimum;
        }

        if (fraction >= 1)
        {
            return _range.Maximum;
        }

        // To the nearest, halves up: what is left of the whole part is exact, and Math.Round takes several times as long.
        double steps = fraction * (_range.Maximum - _range.Minimum);
        long whole = (long)steps;
        return _range.Minimum + whole + (steps - whole >= 0.5 ? 1 : 0);
    }
}
