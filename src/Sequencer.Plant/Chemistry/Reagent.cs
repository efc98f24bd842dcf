using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.Plant.Chemistry;

/// <summary>
/// A commercial reagent's usual strength. <c>MolesPerLitre</c> is the table's rounded figure;
/// <see cref="CalculatedMolesPerLitre"/> follows from mass per cent and density.
/// </summary>
public sealed record Reagent(string Name, string Formula, double MassPercent, double KilogramsPerLitre, double MolesPerLitre)
{
    /// <summary>The strengths that come with this library: defaults, which a supplier's certificate overrules.</summary>
    public static ImmutableArray<Reagent> Usual { get; } = [.. DataTable.Rows(DataTable.Text("reagents.txt")).Select(DataTable.Cells)
        .Select(cells => new Reagent(cells[0], cells[1], Number(cells[2]), Number(cells[3]), Number(cells[4])))];

    /// <summary>mol/L from mass per cent, density and molar mass.</summary>
    public double CalculatedMolesPerLitre => MassPercent / 100 * KilogramsPerLitre * 1000 / MolarMass.Of(Formula);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
