namespace Sequencer.Plant.Description;

/// <summary>
/// A switch with hysteresis. Its fact is true above the threshold (or below, for a low switch) and
/// ends when the value is back by the hysteresis; a normally closed contact is broken while it is true.
/// </summary>
public sealed record SwitchDescription(
    string Tag,
    Measured Measures,
    string In,
    bool ActsAbove,
    double Threshold,
    double Hysteresis,
    bool NormallyClosed);
