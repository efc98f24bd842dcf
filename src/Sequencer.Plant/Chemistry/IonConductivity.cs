using System.Collections.Frozen;
using System.Globalization;

namespace Sequencer.Plant.Chemistry;

/// <summary>What an ion conducts in endless dilution: S cm2 for a mole of its charge at 25 C, and how that goes with the viscosity of water.</summary>
internal readonly record struct IonConductivity(double At25, double ViscosityPower)
{
    private const string Other = "other";

    private static readonly FrozenDictionary<string, IonConductivity> Known = DataTable.Rows(DataTable.Text("ion-conductivity.txt"))
        .Select(DataTable.Cells)
        .ToFrozenDictionary(
            cells => cells[0],
            cells => new IonConductivity(double.Parse(cells[1], CultureInfo.InvariantCulture), double.Parse(cells[2], CultureInfo.InvariantCulture)),
            StringComparer.Ordinal);

    public static IonConductivity Of(string ion) => Known.GetValueOrDefault(ion, Known[Other]);
}
