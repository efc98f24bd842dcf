using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Metals that fall out as hydroxides in a tank of a plant: what they take of base or alkalinity, and what they weigh.</summary>
public sealed class PrecipitationTests
{
    private const string Caustic = "dissolved: {sodium: 1 mol/L}";

    /// <summary>4 mmol/L of carbonate, most of it bicarbonate, and salt that keeps the activities even.</summary>
    private static string Bicarbonate(double ph) => FormattableString.Invariant($"{{temperature: 25 C, pH: {ph:0.0}, balanced_by: sodium, dissolved: {{carbonate: 4 mmol/L, chloride: 100 mmol/L}}, suspended: 100 mg/L}}");

    /// <summary>
    /// kg of caustic for a kg of metal, 20 mmol/L of its nitrate titrated to where hardly any of it is left in solution, and kg of dry hydroxide. Computed from atomic weights.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Cu", 2, "copper", "copper_hydroxide", 8.5, 1.259, 1.535)]
    [InlineData("Zn", 2, "zinc", "zinc_hydroxide", 9.2, 1.224, 1.520)]
    [InlineData("Ni", 2, "nickel", "nickel_hydroxide", 9.7, 1.363, 1.580)]
    [InlineData("Cr", 3, "chromium", "chromium_hydroxide", 8.5, 2.308, 1.981)]
    [InlineData("Fe", 3, "iron", "ferrihydrite", 8.0, 2.149, 1.914)]
    [InlineData("Cd", 2, "cadmium", "cadmium_hydroxide", 10.2, 0.712, 1.303)]
    [InlineData("Pb", 2, "lead", "lead_hydroxide", 9.5, 0.386, 1.164)]
    [InlineData("Al", 3, "aluminium", "aluminium_hydroxide", 6.5, 4.447, 2.891)]
    public void Metals_take_caustic_and_leave_hydroxide(string metal, int charge, string substance, string solid, double ph, double caustic, double hydroxide)
    {
        Beaker beaker = new Beaker($"{{{substance}: 1 mol/L, nitrate: {charge} mol/L}}", Caustic, solid).Given(2.0);
        double causticGrams = beaker.TitratedTo(ph, 2.0 * charge) * MolarMass.Of("NaOH");
        double metalGrams = beaker.SampleLitres * MolarMass.Of(metal);
        Within(caustic, causticGrams / metalGrams, 0.01 * caustic);
        Within(hydroxide, beaker.PrecipitateKilograms * 1e3 / metalGrams, 0.005 * hydroxide);
    }

    /// <summary>Lime and caustic for the iron of a kg of ferric sulphate, 5 mmol/L of iron titrated to pH 7.5. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Ca(OH)2", 0.5, "lime: 0.5 mol/L, lime_dissolves_in: 1 s", 0.556)]
    [InlineData("NaOH", 1.0, Caustic, 0.600)]
    public void Bases_precipitate_the_iron_of_ferric_sulphate(string alkali, double strength, string titrant, double expected)
    {
        Beaker beaker = new Beaker("{iron: 0.5 mol/L, sulphate: 0.75 mol/L}", titrant, "ferrihydrite").Given(1.0);
        double grams = beaker.TitratedTo(7.5, 1.5) * strength * MolarMass.Of(alkali);
        Within(expected, grams / (beaker.SampleLitres * 0.25 * MolarMass.Of("Fe2(SO4)3")), 0.005 * expected);
    }

    /// <summary>
    /// Alkalinity, as CaCO3, that a kg of coagulant (or of its iron) uses up in water of 4 mmol/L of carbonate: the caustic that brings the pH back to what it was, at 50.04 g an equivalent.
    /// Computed from atomic weights.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Fe2(SO4)3", 0.05, "iron: 0.1 mol/L, sulphate: 0.15 mol/L", 7.5, 0.751)]
    [InlineData("FeCl3", 0.1, "iron: 0.1 mol/L, chloride: 0.3 mol/L", 7.5, 0.926)]
    [InlineData("Fe", 0.1, "iron: 0.1 mol/L, chloride: 0.3 mol/L", 7.5, 2.688)]
    [InlineData("Al2(SO4)3.14H2O", 0.05, "aluminium: 0.1 mol/L, sulphate: 0.15 mol/L", 6.5, 0.505)]
    public void Coagulants_use_up_alkalinity(string coagulant, double strength, string sample, double ph, double expected)
    {
        Beaker beaker = Coagulated(sample, 1.0, ph);
        double equivalents = beaker.TitratedTo(ph, 1.5) * 0.2;
        Within(expected, equivalents * MolarMass.Of("CaCO3") / 2.0 / (beaker.SampleLitres * strength * MolarMass.Of(coagulant)), 0.01 * expected);
    }

    /// <summary>kg of ferric hydroxide that coagulants leave. Source: water treatment text, example 12.7 (0.00053 kg of hydroxide per mg/L of ferric sulphate a m3).</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Ferric_sulphate_leaves_ferric_hydroxide()
    {
        Beaker beaker = Coagulated("iron: 0.1 mol/L, sulphate: 0.15 mol/L", 1.0, 7.5);
        Within(0.53, beaker.PrecipitateKilograms * 1e3 / (beaker.SampleLitres * 0.05 * MolarMass.Of("Fe2(SO4)3")), 0.005);
    }

    /// <summary>100 mg/L of solids and 40 mg/L of ferric sulphate: 0.1214 kg of sludge in a m3, dry. Source: water treatment text, example 12.7.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Sludge_of_a_coagulated_water()
    {
        Beaker beaker = Coagulated("iron: 0.2 mol/L, sulphate: 0.3 mol/L", 40.0 * 100.0 / 1000.0 / (0.1 * MolarMass.Of("Fe2(SO4)3")), 7.5);
        Within(0.1214, beaker.Plant.Quantity("TK1.suspended") + (beaker.Plant.Quantity("TK1.precipitate") * 1e-3), 0.01 * 0.1214);
    }

    private static Beaker Coagulated(string sample, double litres, double ph) =>
        new Beaker($"{{{sample}}}", "dissolved: {sodium: 0.2 mol/L}", "ferrihydrite, aluminium_hydroxide", Bicarbonate(ph)).Given(litres);
}
