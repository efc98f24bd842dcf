using System.Runtime.Intrinsics;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// tau dy/dt = u - y for many at once, each solved exactly for an input that is straight between two readings:
/// y1 = u1 - s tau + (y0 - u0 + s tau) exp(-dt / tau), with s the input's slope. One without tau gives its input.
/// </summary>
internal sealed class FirstOrderLags
{
    private readonly double[] _inputs;
    private readonly double[] _outputs;
    private readonly double[] _timeConstants;
    private readonly double[] _decays;
    private double _seconds = double.NaN;

    /// <param name="initial">inputs and outputs at the start, as <see cref="Lanes"/></param>
    /// <param name="timeConstants">s, of the same lanes</param>
    public FirstOrderLags(double[] initial, double[] timeConstants)
    {
        _inputs = [.. initial];
        _outputs = [.. initial];
        _timeConstants = [.. timeConstants];
        _decays = new double[initial.Length];
    }

    public ReadOnlySpan<double> Outputs => _outputs;

    /// <summary>A lag becomes slower or faster from the next reading on.</summary>
    public void SetTimeConstant(int lag, double seconds)
    {
        _timeConstants[lag] = seconds;
        _seconds = double.NaN;
    }

    /// <param name="inputs">now, of all lanes</param>
    /// <param name="seconds">since the last reading</param>
    public void Advance(ReadOnlySpan<double> inputs, double seconds)
    {
        if (seconds != _seconds)
        {
            _seconds = seconds;
            for (int lag = 0; lag < _decays.Length; lag++)
            {
                _decays[lag] = Math.Exp(-seconds / _timeConstants[lag]);
            }
        }

        for (int lane = 0; lane < _outputs.Length; lane += Vector256<double>.Count)
        {
            Vector256<double> input = Vector256.Create(inputs[lane..]);
            Vector256<double> before = Vector256.Create(_inputs, lane);
            Vector256<double> timeConstant = Vector256.Create(_timeConstants, lane);
            Vector256<double> shift = (input - before) / Vector256.Create(seconds) * timeConstant;
            Vector256<double> lagging = input - shift + ((Vector256.Create(_outputs, lane) - before + shift) * Vector256.Create(_decays, lane));
            Vector256.ConditionalSelect(Vector256.GreaterThan(timeConstant, Vector256<double>.Zero), lagging, input).CopyTo(_outputs, lane);
            input.CopyTo(_inputs, lane);
        }
    }
}
