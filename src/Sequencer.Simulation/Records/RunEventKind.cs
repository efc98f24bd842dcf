namespace Sequencer.Simulation.Records;

public enum RunEventKind
{
    /// <summary>An operator's action or a scripted fault.</summary>
    Action,

    AlarmRaised,

    AlarmCleared,

    PowerLost,

    PowerReturned,
}
