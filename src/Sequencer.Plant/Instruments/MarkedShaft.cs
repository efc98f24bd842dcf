using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Instruments;

/// <summary>A slow shaft with a mark on it, that a switch sees once a turn.</summary>
internal sealed class MarkedShaft(Drive drive, double turnSeconds)
{
    /// <summary>Share of a turn since the mark last left the switch, 0 to 1.</summary>
    public double Turned { get; private set; }

    /// <param name="time">now, s</param>
    /// <param name="seconds">since the last reading</param>
    public void Advance(double time, double seconds)
    {
        double turned = Turned + (drive.Effect(time) * seconds / turnSeconds);
        Turned = turned - Math.Floor(turned);
    }
}
