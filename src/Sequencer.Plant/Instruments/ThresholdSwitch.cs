using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>The fact behind a switch, with its hysteresis.</summary>
/// <param name="description">as described</param>
internal sealed class ThresholdSwitch(SwitchDescription description)
{
    private readonly double _threshold = description.Threshold;
    private readonly double _hysteresis = description.Hysteresis;
    private readonly bool _actsAbove = description.ActsAbove;

    public SwitchDescription Description { get; } = description;

    /// <summary>The value is past the threshold, or has not come back by the hysteresis since.</summary>
    public bool IsActing { get; private set; }

    /// <summary>How far a value is beyond where a switch that acts, or does not, turns.</summary>
    public double BeyondTurn(double value, bool acts)
    {
        double past = _actsAbove ? value - _threshold : _threshold - value;
        return acts ? -(past + _hysteresis) : past;
    }

    public event Action? Turned;

    public void Turn()
    {
        IsActing = !IsActing;
        Turned?.Invoke();
    }
}
