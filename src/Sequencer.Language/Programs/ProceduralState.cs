namespace Sequencer.Language.Programs;

/// <summary>The states of IEC 61512-1 that a unit may be in; the numbers are those of the exported text.</summary>
public enum ProceduralState
{
    Idle = 0,
    Running = 1,
    Complete = 2,
    Holding = 3,
    Held = 4,
    Restarting = 5,
    Stopping = 6,
    Stopped = 7,
    Aborting = 8,
    Aborted = 9,
}
