namespace Sequencer.Simulation.Scenarios;

/// <summary>How an operator goes about a prompt.</summary>
public enum OperatorManner
{
    /// <summary>The right answer, after his delay.</summary>
    AsMeant,

    /// <summary>The right answer, too late.</summary>
    Late,

    /// <summary>No answer.</summary>
    Never,

    /// <summary>Another answer, after his delay.</summary>
    Wrong,
}
