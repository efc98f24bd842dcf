using System.Runtime.Intrinsics;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// What comes after each transmitter's sensor, for all of them at once: lag, drift, noise, resolution, 4-20 mA. One after another they
/// would be a good part of a scan.
/// </summary>
internal sealed class SignalChains
{
    private const double SecondsPerDay = 86400.0;

    private readonly FirstOrderLags _lags;
    private readonly double[] _offsets;
    private readonly double[] _driftPerDay;
    private readonly double[] _noise;
    private readonly double[] _resolution;
    private readonly double[] _low;
    private readonly double[] _span;
    private readonly double[] _shown;
    private readonly double[] _milliamps;

    /// <param name="transmitters">as described</param>
    /// <param name="initial">what each measures at the start, as <see cref="Lanes"/></param>
    public SignalChains(IReadOnlyList<TransmitterDescription> transmitters, double[] initial)
    {
        _lags = new FirstOrderLags(initial, Lanes.Of(transmitters, one => one.LagSeconds, 0.0));
        _offsets = Lanes.Of(transmitters, one => one.Offset, 0.0);
        _driftPerDay = Lanes.Of(transmitters, one => one.DriftPerDay, 0.0);
        _noise = Lanes.Of(transmitters, one => one.Noise, 0.0);
        _resolution = Lanes.Of(transmitters, one => one.Resolution, 0.0);
        _low = Lanes.Of(transmitters, one => one.Low, 0.0);
        _span = Lanes.Of(transmitters, one => one.High - one.Low, 1.0);
        _shown = [.. initial];
        _milliamps = new double[initial.Length];
        Wandered = new double[initial.Length];
        for (int index = 0; index < transmitters.Count; index++)
        {
            _milliamps[index] = CurrentLoop.Milliamps(initial[index], transmitters[index].Low, transmitters[index].High);
        }
    }

    /// <summary>By how much a faulty transmitter has wandered away, in base units.</summary>
    public double[] Wandered { get; }

    /// <summary>The values behind the currents.</summary>
    public ReadOnlySpan<double> Shown => _shown;

    /// <summary>mA; whoever knows that a transmitter has failed writes what it gives instead.</summary>
    public Span<double> Milliamps => _milliamps;

    public void SetLag(int transmitter, double seconds) => _lags.SetTimeConstant(transmitter, seconds);

    /// <param name="seen">what reaches the sensors, in base units</param>
    /// <param name="time">now, s</param>
    /// <param name="seconds">since the last reading</param>
    /// <param name="deviates">normal deviates of mean 0 and standard deviation 1, for the noise</param>
    public void Advance(ReadOnlySpan<double> seen, double time, double seconds, ReadOnlySpan<double> deviates)
    {
        _lags.Advance(seen, seconds);
        for (int lane = 0; lane < _shown.Length; lane += Vector256<double>.Count)
        {
            Vector256<double> settled = Vector256.Create(_lags.Outputs[lane..]);
            Vector256<double> drifted = settled + Vector256.Create(_offsets, lane) + Vector256.Create(Wandered, lane)
                + (Vector256.Create(_driftPerDay, lane) * time / Vector256.Create(SecondsPerDay));
            Vector256<double> noisy = drifted + (Vector256.Create(_noise, lane) * Vector256.Create(deviates[lane..]));
            Vector256<double> resolution = Vector256.Create(_resolution, lane);
            Vector256<double> resolved = Vector256.ConditionalSelect(
                Vector256.GreaterThan(resolution, Vector256<double>.Zero), Vector256.Round(noisy / resolution) * resolution, noisy);
            resolved.CopyTo(_shown, lane);
            CurrentLoop.Milliamps(resolved, Vector256.Create(_low, lane), Vector256.Create(_span, lane)).CopyTo(_milliamps, lane);
        }
    }
}
