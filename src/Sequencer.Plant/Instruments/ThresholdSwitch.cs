using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>The fact behind a switch, with its hysteresis.</summary>
/// <param name="description">as described</param>
internal sealed class ThresholdSwitch(SwitchDescription description)
{
    private readonly double _threshold = description.Threshold;

    /// <summary>With none at all a value that stands on the threshold would turn it to and fro.</summary>
    private readonly double _hysteresis = Math.Max(description.Hysteresis, double.Epsilon);
    private readonly bool _actsAbove = description.ActsAbove;

    public event Action? Turned;

    public SwitchDescription Description { get; } = description;

    /// <summary>The value is past the threshold, or has not come back by the hysteresis since.</summary>
    public bool IsActing { get; private set; }

    /// <summary>How far a value is beyond where a switch that acts, or does not, turns.</summary>
    public double BeyondTurn(double value, bool acts)
    {
        double past = _actsAbove ? value - _threshold : _threshold - value;
        return acts ? -(past + _hysteresis) : past;
    }

    public void Turn()
    {
        IsActing = !IsActing;
        Turned?.Invoke();
    }
}
