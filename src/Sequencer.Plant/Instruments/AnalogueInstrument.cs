using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// A transmitter from what is true to its current: what the loop or a covered probe brings, dead
/// time, lag, drift, noise, resolution, then 4-20 mA, and what has failed in it.
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
    private const double SecondsPerDay = 86400.0;

    private readonly double _low;
    private readonly double _high;
    private readonly double _coveredFromLitres;
    private readonly double _dry;
    private readonly double _lagSeconds;
    private readonly double _offset;
    private readonly double _driftPerDay;
    private readonly double _noise;
    private readonly double _resolution;
    private readonly SampleLoop? _loop;
    private readonly TransportDelay? _sample;
    private readonly TransportDelay? _deadTime;
    private readonly FirstOrderLag _lag;
    private readonly bool[] _faults = new bool[Enum.GetValues<TransmitterFault>().Length];
    private bool _hasFailed;
    private double _actual;
    private double _wandered;

    /// <summary>The value behind the current while nothing has failed; most readings are that of the scan before.</summary>
    private double _shown = double.NaN;

    public AnalogueInstrument(TransmitterDescription description, SampleLoop? loop, double initial)
    {
        Description = description;
        (_low, _high, _coveredFromLitres, _lagSeconds) = (description.Low, description.High, description.CoveredFromLitres, description.LagSeconds);
        (_offset, _driftPerDay, _noise, _resolution) = (description.Offset, description.DriftPerDay, description.Noise, description.Resolution);
        _dry = description.Measures is Measured.Conductivity ? 0.0 : DryProbePh;
        _loop = description.Measures is Measured.Ph or Measured.Redox or Measured.Conductivity ? loop : null;
        _sample = _loop is { Description.DelaySeconds: > 0.0 } ? new TransportDelay(_loop.Description.DelaySeconds, initial) : null;
        _deadTime = description.DeadTimeSeconds > 0.0 ? new TransportDelay(description.DeadTimeSeconds, initial) : null;
        _lag = new FirstOrderLag(initial);
        Milliamps = CurrentLoop.Milliamps(initial, description.Low, description.High);
        _actual = initial;
    }

    public TransmitterDescription Description { get; }

    public double Milliamps { get; private set; }

    /// <summary>What is truly so, as a share of the range.</summary>
    public double TrueShare => (_actual - _low) / (_high - _low);

    public void Fail(TransmitterFault fault, bool failed)
    {
        _faults[(int)fault] = failed;
        _hasFailed = _faults.AsSpan().Contains(true);
        _wandered = Has(TransmitterFault.Drift) ? _wandered : 0.0;
        _shown = double.NaN;
    }

    /// <param name="actual">the true value where it measures, in base units</param>
    /// <param name="tankLitres">volume in the tank that a probe hangs in</param>
    /// <param name="time">now, s</param>
    /// <param name="seconds">since the last reading</param>
    /// <param name="deviate">a normal deviate of mean 0 and standard deviation 1, for the noise</param>
    public void Advance(double actual, double tankLitres, double time, double seconds, double deviate)
    {
        _actual = actual;
        double seen = tankLitres < _coveredFromLitres ? _dry : actual;
        if (_sample is not null && _loop is not null)
        {
            seen = _sample.Advance(_loop.Place, seen);
        }

        seen = _deadTime?.Advance(time, seen) ?? seen;
        double lagSeconds = _lagSeconds * (Has(TransmitterFault.Fouled) ? FouledFactor : 1.0);
        double settled = _lag.Advance(seen, seconds, lagSeconds);
        if (Has(TransmitterFault.Drift))
        {
            _wandered += FaultDriftPerHour * (_high - _low) * seconds / SecondsPerHour;
        }

        double drifted = settled + _offset + _wandered + (_driftPerDay == 0.0 ? 0.0 : _driftPerDay * time / SecondsPerDay);
        double noisy = _noise > 0.0 ? drifted + (_noise * deviate) : drifted;
        double resolved = _resolution > 0.0 ? Math.Round(noisy / _resolution) * _resolution : noisy;
        if (_hasFailed || resolved != _shown)
        {
            Milliamps = Current(resolved);
            _shown = _hasFailed ? double.NaN : resolved;
        }
    }

    private double Current(double value)
    {
        if (!_hasFailed)
        {
            return CurrentLoop.Milliamps(value, _low, _high);
        }

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

        double high = Has(TransmitterFault.Misscaled) ? _low + (MisscaledFactor * (_high - _low)) : _high;
        return Has(TransmitterFault.Frozen) ? Milliamps : CurrentLoop.Milliamps(value, _low, high);
    }

    private bool Has(TransmitterFault fault) => _hasFailed && _faults[(int)fault];
}
