namespace Sequencer.Plant;

/// <summary>What stands behind the name of a fault.</summary>
public enum FaultKind
{
    /// <summary>A piece fails.</summary>
    Failure,

    /// <summary>Somebody's hand on a switch: no fault, although a script moves it as one.</summary>
    Hand,
}
