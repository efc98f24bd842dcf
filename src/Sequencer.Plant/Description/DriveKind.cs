namespace Sequencer.Plant.Description;

/// <summary>What kind of thing a controller's output moves.</summary>
public enum DriveKind
{
    Pump,
    Agitator,
    Valve,
    Feeder,
}
