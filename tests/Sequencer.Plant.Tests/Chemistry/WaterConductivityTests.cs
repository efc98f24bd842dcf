using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Conductivities, mS/cm, at 25 C unless said.</summary>
public sealed class WaterConductivityTests
{
    /// <summary>
    /// The primary standards: potassium chloride of 0.745263 g (0.01 demal) and 7.41913 g (0.1 demal) in a kilogram of solution; 1.4083 and 12.852 mS/cm (OIML R 56, from memory).
    /// In mol/L by the density of the solutions, 0.9975 and 1.0017 kg/L (from memory). Nothing was fitted to them, but the limiting conductivities of both ions are themselves drawn from measurements of this salt: it shows the equation of crowding, not the ions.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(0.745263, 0.9975, 1.4083)]
    [InlineData(7.41913, 1.0017, 12.852)]
    public void Potassium_chloride_standards_conduct_as_measured(double grams, double density, double expected)
    {
        double molPerLitre = grams * density / MolarMass.Of("KCl");
        Within(expected, Salt(25, ("K+", molPerLitre), ("Cl-", molPerLitre)), 0.005 * expected);
    }

    /// <summary>
    /// 0.01 mol/kg of potassium chloride from 0 to 50 C (CRC Handbook of Chemistry and Physics, standard solutions for calibrating conductivity cells, from memory), within 2.5 %: as close as a power of the viscosity that was
    /// fitted to the limiting conductivities of these two ions at 0 to 45 C comes.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(0, 0.77292)]
    [InlineData(10, 1.01395)]
    [InlineData(18, 1.21993)]
    [InlineData(25, 1.40823)]
    [InlineData(35, 1.68779)]
    [InlineData(50, 2.12343)]
    public void Potassium_chloride_conducts_more_in_warm_water_as_measured(double celsius, double expected) =>
        Within(expected, Salt(celsius, ("K+", 0.00997), ("Cl-", 0.00997)), 0.025 * expected);

    /// <summary>
    /// Equivalent conductivities at 0.01 and 0.1 mol/L of charge, S cm2 (handbooks, from memory): within 1 % for salts and acids of single charges, but for acetate 4 %, of which the chemistry's pair with sodium takes some; within 7 % for the others, which come out too low.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData("Na+", "Cl-", 0.01, 118.45, 1)]
    [InlineData("Na+", "Cl-", 0.1, 106.69, 1)]
    [InlineData("H+", "Cl-", 0.01, 411.80, 1)]
    [InlineData("H+", "Cl-", 0.1, 391.13, 1)]
    [InlineData("H+", "NO3-", 0.1, 384, 1)]
    [InlineData("Na+", "Acetate-", 0.1, 72.76, 4)]
    [InlineData("Ca+2", "Cl-", 0.01, 120.30, 1)]
    [InlineData("Ca+2", "Cl-", 0.1, 102.41, 7)]
    [InlineData("Na+", "SO4-2", 0.01, 112.38, 1)]
    [InlineData("Na+", "SO4-2", 0.1, 89.94, 7)]
    public void A_salt_or_acid_conducts_as_the_tables_say(string cation, string anion, double equivalents, double expected, double percent)
    {
        double conductivity = Salt(25, (cation, equivalents / Charge(cation)), (anion, equivalents / Charge(anion)));
        Within(expected, conductivity / equivalents, 0.01 * percent * expected);
    }

    /// <summary>
    /// Half a gram in 100 g of solution at 20 C, to which nothing was fitted: two digits of the CRC Handbook of Chemistry and Physics, electrical conductivity of aqueous solutions (from memory). Within 5 %: so far is that table's own potassium chloride, 8.2, from what its primary standards would have.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData("Na+", 1, "Cl-", 1, 58.44, 8.2)]
    [InlineData("Na+", 1, "H+", 0, 40.00, 24.8)]
    [InlineData("NH4+", 1, "Cl-", 1, 53.49, 10.5)]
    [InlineData("Ca+2", 1, "Cl-", 2, 110.98, 8.1)]
    [InlineData("Mg+2", 1, "Cl-", 2, 95.21, 8.6)]
    [InlineData("Na+", 2, "SO4-2", 1, 142.04, 5.9)]
    public void Half_a_percent_of_a_salt_conducts_as_the_table_says(string cation, int cations, string anion, int anions, double gramsPerMole, double expected)
    {
        double molPerLitre = 5.0 * 1.002 / gramsPerMole;
        Within(expected, Salt(20, (cation, cations * molPerLitre), (anion, anions * molPerLitre)), 0.05 * expected);
    }

    /// <summary>Clean water of 25 C: 0.055 uS/cm (textbooks, from memory).</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Water_alone_conducts_next_to_nothing() => Within(5.5e-5, Salt(25, ("Na+", 0.0)), 1e-6);

    /// <summary>Neutralising strong acid with alkali of the same strength goes through a least conductivity at the end.</summary>
    [Fact]
    public void A_titration_of_acid_conducts_least_where_it_ends()
    {
        double[] along = [.. Enumerable.Range(0, 21).Select(step => Salt(25, ("Cl-", 0.01), ("Na+", 0.001 * step)))];
        Assert.Equal(10, Array.IndexOf(along, along.Min()));
    }

    [Fact]
    public void Every_ion_of_the_table_is_in_the_chemistry()
    {
        HashSet<string> species = [.. ChemicalSystem.Everything.Species.Select(one => one.Name)];
        string[] ions = [.. DataTable.Rows(DataTable.Text("ion-conductivity.txt")).Select(row => DataTable.Cells(row)[0]).Where(ion => ion != "other")];
        Assert.True(ions.Length > 20);
        Assert.Equal([], ions.Where(ion => !species.Contains(ion)));
    }

    /// <summary>Far beyond where the equation holds nothing goes below nothing, nor up in proportion to what is added.</summary>
    [Fact]
    public void A_strong_brine_still_conducts()
    {
        double weak = Salt(25, ("Na+", 1.0), ("Cl-", 1.0));
        double strong = Salt(25, ("Na+", 4.0), ("Cl-", 4.0));
        double metal = Salt(25, ("Al+3", 1.0), ("SO4-2", 1.5));
        Assert.InRange(strong, weak, 4.0 * weak);
        Assert.True(metal > 0.0);
    }

    private static double Salt(double celsius, params (string Component, double MolPerLitre)[] amounts)
    {
        (string Component, double MolPerLitre)[] held = [.. amounts.Where(amount => amount.Component != "H+")];
        WaterBatch batch = new(ChemicalSystem.Everything.Restrict([.. held.Select(amount => amount.Component)]));
        foreach ((string component, double molPerLitre) in held)
        {
            batch.With(component, molPerLitre);
        }

        batch.Ph(celsius);
        return new WaterConductivity(batch.Solver.System).MillisiemensPerCentimetre(batch.Solver.Molality, celsius);
    }

    private static int Charge(string ion) => ion.EndsWith('2') ? 2 : 1;
}
