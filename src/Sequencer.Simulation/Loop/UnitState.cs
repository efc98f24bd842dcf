namespace Sequencer.Simulation.Loop;

/// <summary>The procedural states of a unit, IEC 61512-1, numbered as the variable <c>UNIT.state</c>.</summary>
public enum UnitState
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
