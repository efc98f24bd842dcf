using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Instruments;

/// <summary>A sample loop: the probe sees what left the tank one loop's volume of flow ago; without flow, what stands there.</summary>
internal sealed class SampleLoop(SampleLoopDescription description, Drive pump, TankBody tank)
{
    private bool _isBlocked;

    public SampleLoopDescription Description { get; } = description;

    public TankBody Tank { get; } = tank;

    /// <summary>Seconds of full flow so far: the place along the loop.</summary>
    public double Place { get; private set; }

    public double FlowLitresPerSecond { get; private set; }

    public void Block(bool blocked) => _isBlocked = blocked;

    public void Advance(double time, double seconds, double tankLitres)
    {
        double share = _isBlocked || tankLitres < Description.NeedsLitres ? 0.0 : pump.Effect(time);
        FlowLitresPerSecond = share * Description.FlowLitresPerSecond;
        Place += share * seconds;
    }
}
