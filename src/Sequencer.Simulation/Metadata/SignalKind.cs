namespace Sequencer.Simulation.Metadata;

/// <summary>What a named variable of the program is to the plant and its operator.</summary>
public enum SignalKind
{
    /// <summary>A 4-20 mA measurement.</summary>
    Analogue,

    /// <summary>A contact.</summary>
    Switch,

    /// <summary>A value that the batch copies from the operator's setting when it starts.</summary>
    Parameter,

    /// <summary>A motor or valve that the program writes.</summary>
    Output,

    /// <summary>A 4-20 mA set value that the program writes.</summary>
    Setpoint,

    /// <summary>A dose total of the batch.</summary>
    Total,

    /// <summary>An amount that the program counts.</summary>
    Count,

    /// <summary>Anything else worth a name and a unit.</summary>
    Other,
}
