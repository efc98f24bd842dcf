namespace Sequencer.Plant.Ledger;

/// <summary>What stands at an end of a line.</summary>
public enum FlowEnd
{
    /// <summary>A water from outside that serves the plant.</summary>
    Supply,

    /// <summary>The water from outside that the plant is there to treat.</summary>
    ToTreat,

    Reagent,

    Tank,

    /// <summary>A place that water goes to and does not come back from.</summary>
    Outside,
}
