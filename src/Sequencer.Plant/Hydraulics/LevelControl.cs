using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>A control of its own in a line, in proportion to what its tank holds; it may be stuck at either end.</summary>
internal sealed class LevelControl(LevelControlDescription description)
{
    private bool _stuckOpen;
    private bool _stuckShut;

    public void StickOpen(bool stuck) => _stuckOpen = stuck;

    public void StickShut(bool stuck) => _stuckShut = stuck;

    /// <summary>0 to 1.</summary>
    public double Opening(double litres) => _stuckShut ? 0.0
        : _stuckOpen ? 1.0
        : Math.Clamp((litres - description.ShutLitres) / (description.OpenLitres - description.ShutLitres), 0.0, 1.0);
}
