namespace Sequencer.Plant.Chemistry;

/// <summary>How a solve ended and, where it failed, the component, solid or quantity whose equation failed, and by how much.</summary>
public readonly record struct EquilibriumOutcome(EquilibriumStatus Status, string Place, double Value)
{
    public static EquilibriumOutcome Solved => new(EquilibriumStatus.Solved, string.Empty, 0);

    public bool IsSolved => Status == EquilibriumStatus.Solved;

    /// <summary>One sentence for a person.</summary>
    public string Describe() => Status switch
    {
        EquilibriumStatus.Solved => "equilibrium solved",
        EquilibriumStatus.TotalOutOfRange => FormattableString.Invariant($"the total of {Place} is {Value:g6} mol/kg, which cannot be"),
        EquilibriumStatus.TemperatureOutOfRange => FormattableString.Invariant($"the temperature is {Value:g6} C, outside 0 to 100 C"),
        EquilibriumStatus.PhOutOfRange => FormattableString.Invariant($"pH {Value:g6} is outside -1 to 15"),
        EquilibriumStatus.BalanceNotClosed => FormattableString.Invariant($"the balance of {Place} does not close; {Value:g3} mol/kg is left"),
        _ => FormattableString.Invariant($"the amount of {Place} does not settle; its saturation index is {Value:g3}"),
    };
}
