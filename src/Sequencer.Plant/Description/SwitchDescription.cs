namespace Sequencer.Plant.Description;

/// <summary>
/// A switch with hysteresis. Its fact is true above the threshold (or below, for a low switch) and
/// ends when the value is back by the hysteresis; a normally closed contact is broken while it is true.
/// </summary>
/// <param name="TurnSeconds">time of one turn at full speed, where it watches the turns of a motor; its threshold is then a share of a turn</param>
/// <param name="PerSuspended">NTU for each g/L of solids, where it watches turbidity</param>
/// <param name="AtFullSpeed">kPa at full speed, where it watches the pressure of a pump that is no drum's</param>
public sealed record SwitchDescription(
    string Tag,
    Measured Measures,
    string In,
    bool ActsAbove,
    double Threshold,
    double Hysteresis,
    bool NormallyClosed,
    double TurnSeconds = 0.0,
    double PerSuspended = 0.0,
    double? AtFullSpeed = null);
