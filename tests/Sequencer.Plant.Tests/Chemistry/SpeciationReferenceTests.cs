using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>
/// Every row of the reference series (Reference/speciation.csv, computed with PHREEQC 3 and minteq.v4.dat). Bands: pH 0.02,
/// and 0.1 at an equivalence point; dissolved metal and solids 10 %; ionic strength 2 %.
/// </summary>
public sealed class SpeciationReferenceTests
{
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A1_hydrochloric_acid_titrated_with_sodium_hydroxide() =>
        Check("A1", 10.0, (batch, x) => batch.With("Cl-", 10e-3).With("Na+", x * 1e-3));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A2_nitric_acid_titrated_with_lime() =>
        Check("A2", 5.0, (batch, x) => batch.With("NO3-", 10e-3).With("Ca+2", x * 1e-3));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void B1_bicarbonate_titrated_with_hydrochloric_acid() =>
        Check("B1", 2.0, (batch, x) => batch.With("Na+", 2e-3).With("CO3-2", 2e-3).With("Cl-", x * 1e-3));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void D1_acetic_acid_titrated_with_sodium_hydroxide() =>
        Check("D1", 10.0, (batch, x) => batch.With("Acetate-", 10e-3).With("Na+", x * 1e-3));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void E1_ferric_sulphate_in_bicarbonate_water() =>
        Check("E1", null, (batch, x) => FerricSulphate(batch, x));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void F1_ferric_sulphate_neutralised_with_lime() =>
        Check("F1", null, (batch, x) => FerricSulphate(batch, 1).With("Ca+2", x * 1e-3).Allow("Gypsum"));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void G1_saturated_lime_water_from_5_to_35_C() =>
        Check("G1", null, (batch, _) => batch.With("Ca+2", 10).Allow("Portlandite"));

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void G2_pure_water_from_5_to_35_C() => Check("G2", null, (batch, _) => batch);

    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void G3_dilute_sodium_hydroxide_from_5_to_35_C() => Check("G3", null, (batch, _) => batch.With("Na+", 1e-3));

    /// <summary>
    /// The reference closes the charge of the background by nitrate; then the solid dissolves, and sodium hydroxide is added or
    /// taken away to hold the pH (its ionic strengths show that: nitrate instead gives 0.146 at pH 5.5 with copper, not 0.112).
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("H-Fe", "Fe+3", "Ferrihydrite")]
    [InlineData("H-Cu", "Cu+2", "Cu(OH)2")]
    [InlineData("H-Zn", "Zn+2", "Zn(OH)2(am)")]
    [InlineData("H-Cd", "Cd+2", "Cd(OH)2")]
    [InlineData("H-Pb", "Pb+2", "Pb(OH)2")]
    [InlineData("H-Al", "Al+3", "Al(OH)3(am)")]
    public void H_solubility_of_a_metal_hydroxide_at_a_held_pH(string series, string metal, string solid)
    {
        IReadOnlyList<ReferencePoint> points = ReferencePoint.Series(series);
        Assert.NotEmpty(points);
        WaterBatch batch = new WaterBatch(ChemicalSystem.DefaultWithMetals().Restrict("Na+", "NO3-", metal)).Allow(solid);
        foreach (ReferencePoint point in points)
        {
            batch.With("Na+", 0.1).With("NO3-", 0.1).With(metal, 0);
            CloseCharge(batch, point.Ph, "NO3-", 1);
            batch.With(metal, 0.2);
            CloseCharge(batch, point.Ph, "Na+", -1);
            Assert.True(Math.Abs(batch.Solver.Charge) < 1e-6, $"{point}: charge {batch.Solver.Charge} left");
            AssertRelative(point, "dissolved metal", point.Quantities["total_metal_mol_kg"], batch.Dissolved(metal), 0.1);
            AssertRelative(point, "ionic strength", point.IonicStrength, batch.Solver.IonicStrength, 0.02);
        }
    }

    private static void CloseCharge(WaterBatch batch, double ph, string component, int sign)
    {
        for (int round = 0; round < 40; round++)
        {
            batch.HoldPh(ph);
            batch[component] = Math.Max(0, batch[component] + (0.6 * sign * batch.Solver.Charge));
        }
    }

    private static WaterBatch FerricSulphate(WaterBatch batch, double millimoles) => batch
        .With("Na+", 2e-3).With("CO3-2", 2e-3).With("Fe+3", millimoles * 2e-3).With("SO4-2", millimoles * 3e-3).Allow("Ferrihydrite");

    private static void Check(string series, double? equivalence, Func<WaterBatch, double, WaterBatch> prepare)
    {
        IReadOnlyList<ReferencePoint> points = ReferencePoint.Series(series);
        Assert.NotEmpty(points);
        foreach (ReferencePoint point in points)
        {
            WaterBatch batch = prepare(new(Tables.Minteq), point.X);
            double ph = batch.Ph(point.Celsius);
            double band = point.X == equivalence ? 0.1 : 0.02;
            Comparison.Note(point.Ph, ph, band);
            Assert.True(Math.Abs(ph - point.Ph) <= band, $"{point}: pH {ph} against {point.Ph}");
            AssertRelative(point, "ionic strength", point.IonicStrength, batch.Solver.IonicStrength, 0.02);
            foreach ((string column, double expected) in point.Quantities)
            {
                AssertRelative(point, column, expected, Quantity(batch, column), 0.1);
            }
        }
    }

    private static double Quantity(WaterBatch batch, string column) => column switch
    {
        "total_Fe(3)_mol_kg" => batch.Dissolved("Fe+3"),
        "total_S(6)_mol_kg" => batch.Dissolved("SO4-2"),
        "total_C(4)_mol_kg" => batch.Dissolved("CO3-2"),
        "total_Ca_mol_kg" => batch.Dissolved("Ca+2"),
        "solid_Ferrihydrite_mol" => batch.SolidAmount("Ferrihydrite"),
        "solid_Gypsum_mol" => batch.SolidAmount("Gypsum"),
        "solid_Calcite_mol" => batch.SolidAmount("Calcite"),
        "solid_Portlandite_mol" => batch.SolidAmount("Portlandite"),
        _ => throw new ArgumentException($"no quantity for column {column}", nameof(column)),
    };

    private static void AssertRelative(ReferencePoint point, string quantity, double expected, double actual, double band)
    {
        Comparison.Note(expected, actual, band * expected);
        Assert.True(Math.Abs(actual - expected) <= band * expected, FormattableString.Invariant($"{point}: {quantity} {actual:g6} against {expected:g6}"));
    }
}
