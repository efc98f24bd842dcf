namespace Sequencer.Plant.Description;

/// <summary>A control of its own, by a float or a local controller, that lets a line draw from a tank the more the fuller it is.</summary>
/// <param name="ShutLitres">volume at which it lets nothing through</param>
/// <param name="OpenLitres">volume from which it is all open</param>
public sealed record LevelControlDescription(double ShutLitres, double OpenLitres);
