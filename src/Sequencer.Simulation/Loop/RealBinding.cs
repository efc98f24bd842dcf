using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;

namespace Sequencer.Simulation.Loop;

/// <summary>What is truly so where a transmitter measures, for the input that requirements read it from.</summary>
internal struct RealBinding(int transmitter, int input, IntegerRange reading, IntegerRange real)
{
    private double _read = double.NaN;

    public void Read(IPlant plant, long[] inputs)
    {
        double share = plant.TrueShare(transmitter);
        if (share == _read)
        {
            return;
        }

        _read = share;
        double steps = reading.Minimum + (share * (reading.Maximum - reading.Minimum));
        inputs[input] = double.IsNaN(steps) ? real.Minimum : (long)Math.Clamp(Math.Round(steps), real.Minimum, real.Maximum);
    }
}
