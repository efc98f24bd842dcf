using Sequencer.Control.Signals;

namespace Sequencer.Simulation.Loop;

/// <summary>A transmitter wired to an input and to the input that says its channel is bad (-1: none).</summary>
internal struct AnalogueBinding(int instrument, int input, int fault, AnalogueScaling channel)
{
    private AnalogueScaling _channel = channel;

    public readonly void Write(long[] inputs)
    {
        inputs[input] = _channel.Value;
        if (fault >= 0)
        {
            inputs[fault] = _channel.Fault ? 1 : 0;
        }
    }

    public void Read(ReadOnlySpan<double> milliamps) => _channel.Read(milliamps[instrument]);
}
