using Sequencer.Plant.Description;

namespace Sequencer.Plant.Instruments;

/// <summary>The fact behind a switch, with its hysteresis.</summary>
internal sealed class ThresholdSwitch(SwitchDescription description)
{
    public SwitchDescription Description { get; } = description;

    /// <summary>The value is past the threshold, or has not come back by the hysteresis since.</summary>
    public bool IsActing { get; private set; }

    /// <summary>Takes the value now; true where it turns by it.</summary>
    public bool Advance(double value)
    {
        double past = Description.ActsAbove ? value - Description.Threshold : Description.Threshold - value;
        bool acted = IsActing;
        IsActing = acted ? past > -Description.Hysteresis : past >= 0.0;
        return IsActing != acted;
    }
}
