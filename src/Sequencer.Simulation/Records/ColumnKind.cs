namespace Sequencer.Simulation.Records;

public enum ColumnKind
{
    /// <summary>The state of a unit: an index into the column's labels.</summary>
    UnitState,

    /// <summary>The active steps of a unit, joined by +: an index into the column's labels.</summary>
    ActiveSteps,

    /// <summary>A measurement, as the controller holds it.</summary>
    Signal,

    /// <summary>A dose total.</summary>
    Total,

    /// <summary>A contact's fact or a channel's fault, 0 or 1.</summary>
    Switch,

    /// <summary>An output, 0 or 1.</summary>
    Output,

    /// <summary>A physical quantity of the plant.</summary>
    Quantity,
}
