using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// A transmitter's sensor, with what the loop or a covered probe brings and its dead time, and what has failed in it. What comes
/// after the sensor is the same for all: <see cref="SignalChains"/>.
/// </summary>
internal sealed class AnalogueInstrument
{
    /// <summary>A fouled probe is this much slower: 30 s against 6 s (common practice; a millimetre of slime can mean a factor of 40).</summary>
    private const double FouledFactor = 5.0;

    /// <summary>Share of the span by which a faulty reading wanders an hour.</summary>
    private const double FaultDriftPerHour = 0.05;

    /// <summary>A loop that is ranged wrongly has a range this much wider from the same low end (our own choice), so that it reads half of the span's share.</summary>
    private const double MisscaledFactor = 2.0;

    /// <summary>A glass electrode that hangs dry gives about no voltage, which reads as pH 7 (from memory).</summary>
    private const double DryProbePh = 7.0;

    private const double SecondsPerHour = 3600.0;

    private readonly double _dry;
    private readonly SampleLoop? _loop;
    private readonly TransportDelay? _sample;
    private readonly TransportDelay? _deadTime;
    private readonly bool[] _faults = new bool[Enum.GetValues<TransmitterFault>().Length];

    public AnalogueInstrument(TransmitterDescription description, SampleLoop? loop, double initial)
    {
        Description = description;
        _dry = description.Measures is Measured.Conductivity ? 0.0 : DryProbePh;
        _loop = description.Measures is Measured.Ph or Measured.Redox or Measured.Conductivity ? loop : null;
        _sample = _loop is { Description.DelaySeconds: > 0.0 } ? new TransportDelay(_loop.Description.DelaySeconds, initial) : null;
        _deadTime = description.DeadTimeSeconds > 0.0 ? new TransportDelay(description.DeadTimeSeconds, initial) : null;
    }

    public TransmitterDescription Description { get; }

    public bool HasFailed { get; private set; }

    /// <summary>What it measures is not what its sensor sees at the moment: the probe may hang dry, or the water come late.</summary>
    public bool SeesOtherwise => Description.CoveredFromLitres > 0.0 || _sample is not null || _deadTime is not null;

    public double LagSeconds => Description.LagSeconds * (Has(TransmitterFault.Fouled) ? FouledFactor : 1.0);

    public void Fail(TransmitterFault fault, bool failed)
    {
        _faults[(int)fault] = failed;
        HasFailed = _faults.AsSpan().Contains(true);
    }

    /// <summary>What reaches the sensor, in base units.</summary>
    /// <param name="actual">the true value where it measures</param>
    /// <param name="tankLitres">volume in the tank that a probe hangs in</param>
    /// <param name="time">now, s</param>
    public double Seen(double actual, double tankLitres, double time)
    {
        double seen = tankLitres < Description.CoveredFromLitres ? _dry : actual;
        if (_sample is not null && _loop is not null)
        {
            seen = _sample.Advance(_loop.Place, seen);
        }

        return _deadTime?.Advance(time, seen) ?? seen;
    }

    /// <summary>By how much it has wandered away after that many seconds more, in base units.</summary>
    public double Wandered(double before, double seconds) =>
        Has(TransmitterFault.Drift) ? before + (FaultDriftPerHour * (Description.High - Description.Low) * seconds / SecondsPerHour) : 0.0;

    /// <summary>The current of one that has failed, mA.</summary>
    /// <param name="shown">the value that it would show</param>
    /// <param name="before">mA, its current at the last reading</param>
    public double Current(double shown, double before)
    {
        if (Has(TransmitterFault.WireBreak))
        {
            return CurrentLoop.WireBreak;
        }

        if (Has(TransmitterFault.Failed))
        {
            return Description.FailsHigh ? CurrentLoop.FailedHigh : CurrentLoop.FailedLow;
        }

        if (Has(TransmitterFault.StuckLow) || Has(TransmitterFault.StuckHigh))
        {
            return Has(TransmitterFault.StuckLow) ? CurrentLoop.Zero : CurrentLoop.Zero + CurrentLoop.Span;
        }

        double range = Description.High - Description.Low;
        double high = Description.Low + ((Has(TransmitterFault.Misscaled) ? MisscaledFactor : 1.0) * range);
        return Has(TransmitterFault.Frozen) ? before : CurrentLoop.Milliamps(shown, Description.Low, high);
    }

    private bool Has(TransmitterFault fault) => _faults[(int)fault];
}
