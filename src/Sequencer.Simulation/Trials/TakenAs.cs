namespace Sequencer.Simulation.Trials;

/// <summary>Which value of a run counts.</summary>
public enum TakenAs
{
    AtEnd,
    Lowest,
    Highest,
}
