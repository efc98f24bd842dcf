namespace Sequencer.Plant.Description;

/// <summary>
/// A switch with hysteresis. Its fact is true above the threshold (or below, for a low switch) and
/// ends when the value is back by the hysteresis; a normally closed contact is broken while it is true.
/// </summary>
/// <param name="TurnSeconds">time of one turn at full speed, where it watches the turns of a motor; its threshold is then a share of a turn</param>
public sealed record SwitchDescription(
    string Tag,
    Measured Measures,
    string In,
    bool ActsAbove,
    double Threshold,
    double Hysteresis,
    bool NormallyClosed,
    double TurnSeconds = 0.0);
