namespace Sequencer.Plant.Integration;

internal enum StepOutcome
{
    /// <summary>A step was accepted; its dense output is there.</summary>
    Accepted,

    /// <summary>No step was small enough for the error wanted: the equations are stiff or broken here.</summary>
    TooSmall,
}
