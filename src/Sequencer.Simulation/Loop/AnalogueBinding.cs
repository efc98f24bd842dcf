using Sequencer.Control.Signals;

namespace Sequencer.Simulation.Loop;

/// <summary>A transmitter wired to an input and to the input that says its channel is bad (-1: none).</summary>
internal struct AnalogueBinding(int transmitter, int input, int fault, AnalogueScaling channel)
{
    private AnalogueScaling _channel = channel;
    private double _read = double.NaN;

    public void Read(ReadOnlySpan<double> currents, long[] inputs)
    {
        double milliamps = currents[transmitter];
        if (milliamps == _read)
        {
            return;
        }

        _read = milliamps;
        _channel.Read(milliamps);
        inputs[input] = _channel.Value;
        if (fault >= 0)
        {
            inputs[fault] = _channel.Fault ? 1 : 0;
        }
    }
}
