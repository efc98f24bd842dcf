namespace Sequencer.Simulation.Trials;

/// <summary>What ended a run.</summary>
public enum RunEndKind
{
    /// <summary>What the scenario waits for came.</summary>
    Came,

    /// <summary>The unit that it waits for was held, stopped or aborted for so long that only a person could have gone on.</summary>
    AtRest,

    /// <summary>The longest time was over.</summary>
    TimeOver,

    /// <summary>The plant model lost its meaning.</summary>
    ModelStopped,

    /// <summary>It was never begun: the plant cannot have its values together.</summary>
    NotPlayable,
}
