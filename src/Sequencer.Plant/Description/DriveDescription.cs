namespace Sequencer.Plant.Description;

/// <summary>
/// A pump, an agitator, a powder feeder or an on/off valve: it goes from rest to full speed, or from one end of its
/// travel to the other, evenly in <paramref name="TravelSeconds"/>.
/// </summary>
/// <param name="Tag">the output's tag</param>
/// <param name="Kind">pump, agitator, feeder or valve</param>
/// <param name="TravelSeconds">time to speed, or travel time</param>
/// <param name="OpenWhenDeEnergised">a valve whose spring opens it</param>
/// <param name="OnSwitch">contact made at speed, or at the open end; null for none</param>
/// <param name="OffSwitch">contact made at the closed end; null for none</param>
/// <param name="SpeedFrom">the analogue output that sets the speed of a motor, full at its upper end; null for a fixed speed</param>
/// <param name="GivesKilogramsPerSecond">powder that a feeder moves at full speed; 0 for others</param>
public sealed record DriveDescription(
    string Tag,
    DriveKind Kind,
    double TravelSeconds,
    bool OpenWhenDeEnergised,
    string? OnSwitch,
    string? OffSwitch,
    string? SpeedFrom = null,
    double GivesKilogramsPerSecond = 0.0);
