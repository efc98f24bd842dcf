namespace Sequencer.Simulation.Scenarios;

public enum ManualMode
{
    /// <summary>The program demands.</summary>
    Automatic,

    /// <summary>The operator demands on.</summary>
    On,

    /// <summary>The operator demands off.</summary>
    Off,
}
