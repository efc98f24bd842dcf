using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>The fact behind a switch, with its hysteresis.</summary>
internal sealed class ThresholdSwitch(SwitchDescription description)
{
    private readonly double _threshold = description.Threshold;
    private readonly double _hysteresis = description.Hysteresis;
    private readonly bool _actsAbove = description.ActsAbove;

    public SwitchDescription Description { get; } = description;

    /// <summary>The value is past the threshold, or has not come back by the hysteresis since.</summary>
    public bool IsActing { get; private set; }

    /// <summary>Takes the value now; true where it turns by it.</summary>
    public bool Advance(double value)
    {
        double past = _actsAbove ? value - _threshold : _threshold - value;
        bool acted = IsActing;
        IsActing = acted ? past > -_hysteresis : past >= 0.0;
        return IsActing != acted;
    }
}
