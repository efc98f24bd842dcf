namespace Sequencer.Plant.Instruments;

/// <summary>
/// tau dy/dt = u - y, solved exactly for an input that is straight between two readings:
/// y1 = u1 - s tau + (y0 - u0 + s tau) exp(-dt / tau), with s the input's slope.
/// </summary>
internal sealed class FirstOrderLag(double initial)
{
    private double _input = initial;

    public double Output { get; private set; } = initial;

    public double Advance(double input, double seconds, double timeConstantSeconds)
    {
        if (timeConstantSeconds <= 0.0)
        {
            Output = input;
        }
        else
        {
            double shift = (input - _input) / seconds * timeConstantSeconds;
            Output = input - shift + ((Output - _input + shift) * Math.Exp(-seconds / timeConstantSeconds));
        }

        _input = input;
        return Output;
    }
}
