namespace Sequencer.Plant.Chemistry;

/// <summary>How a solve ended. Only <see cref="Solved"/> leaves a solution in the solver.</summary>
public enum EquilibriumStatus
{
    Solved,

    /// <summary>A total is negative beyond rounding, infinite or not a number.</summary>
    TotalOutOfRange,

    /// <summary>The temperature is outside 0 to 100 C.</summary>
    TemperatureOutOfRange,

    /// <summary>The pH asked for is outside -1 to 15.</summary>
    PhOutOfRange,

    /// <summary>A balance did not close within the limit of iterations.</summary>
    BalanceNotClosed,

    /// <summary>The set of solids present did not settle within the limit of changes.</summary>
    SolidsNotSettled,
}
