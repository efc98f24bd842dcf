namespace Sequencer.Plant.Chemistry;

/// <summary>
/// The stoichiometry of species or of solids, row by row. Component 0 is the proton, component j + 1 is
/// <see cref="ChemicalSystem.Components"/>[j]; each row's components ascend.
/// </summary>
internal sealed class SparseReactions
{
    public SparseReactions(ChemicalSystem system, IReadOnlyList<Stoichiometry> rows, IReadOnlyList<EquilibriumConstant> constants)
    {
        Dictionary<string, int> places = new(StringComparer.Ordinal) { [ReactionEquation.Proton] = 0 };
        foreach (Component component in system.Components)
        {
            places[component.Name] = places.Count;
        }

        Start = new int[rows.Count + 1];
        Water = [.. rows.Select(row => row.Water)];
        List<(int Component, double Coefficient)> terms = [];
        for (int row = 0; row < rows.Count; row++)
        {
            terms.AddRange(rows[row].Components.Select(term => (places[term.Component], term.Coefficient)).OrderBy(term => term.Item1));
            Start[row + 1] = terms.Count;
        }

        Component = [.. terms.Select(term => term.Component)];
        Coefficient = [.. terms.Select(term => term.Coefficient)];
        Constants = [.. constants];
        LnConstant = new double[rows.Count];
    }

    public int[] Start { get; }

    public int[] Component { get; }

    public double[] Coefficient { get; }

    public double[] Water { get; }

    /// <summary>ln K at the temperature last set.</summary>
    public double[] LnConstant { get; }

    private EquilibriumConstant[] Constants { get; }

    public void SetTemperature(double celsius)
    {
        for (int row = 0; row < LnConstant.Length; row++)
        {
            LnConstant[row] = Math.Log(10) * Constants[row].Log10(celsius);
        }
    }

    /// <summary>True where every component of the row is present.</summary>
    public bool IsPresent(int row, ReadOnlySpan<bool> componentPresent)
    {
        for (int term = Start[row]; term < Start[row + 1]; term++)
        {
            if (!componentPresent[Component[term]])
            {
                return false;
            }
        }

        return true;
    }
}
