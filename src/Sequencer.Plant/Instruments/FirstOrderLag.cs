namespace Sequencer.Plant.Instruments;

/// <summary>
/// tau dy/dt = u - y, solved exactly for an input that is straight between two readings:
/// y1 = u1 - s tau + (y0 - u0 + s tau) exp(-dt / tau), with s the input's slope.
/// </summary>
internal sealed class FirstOrderLag(double initial)
{
    private double _input = initial;
    private double _seconds = double.NaN;
    private double _timeConstant = double.NaN;
    private double _decay;

    public double Output { get; private set; } = initial;

    public double Advance(double input, double seconds, double timeConstantSeconds)
    {
        if (timeConstantSeconds <= 0.0)
        {
            Output = input;
        }
        else
        {
            double shift = input == _input ? 0.0 : (input - _input) / seconds * timeConstantSeconds;
            if (seconds != _seconds || timeConstantSeconds != _timeConstant)
            {
                (_seconds, _timeConstant, _decay) = (seconds, timeConstantSeconds, Math.Exp(-seconds / timeConstantSeconds));
            }

            Output = input - shift + ((Output - _input + shift) * _decay);
        }

        _input = input;
        return Output;
    }
}
