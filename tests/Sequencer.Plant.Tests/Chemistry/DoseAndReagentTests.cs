using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Reagent strengths, and doses and sludge by stoichiometry, kg per kg of pure substance.</summary>
public sealed class DoseAndReagentTests
{
    /// <summary>Source: laboratory tables of reagent strengths.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData("sulphuric acid 96 %", 1.84, 18.0)]
    [InlineData("sulphuric acid 98 %", 1.84, 18.4)]
    [InlineData("hydrochloric acid 32 %", 1.16, 10.2)]
    [InlineData("hydrochloric acid 36 %", 1.18, 11.65)]
    [InlineData("hydrochloric acid 37.2 %", 1.18, 12.1)]
    [InlineData("sodium hydroxide 47 %", 1.50, 17.6)]
    [InlineData("sodium hydroxide 50.5 %", 1.53, 19.4)]
    [InlineData("nitric acid 70 %", 1.42, 15.8)]
    [InlineData("phosphoric acid 85.5 %", 1.71, 14.8)]
    [InlineData("ammonia 25 %", 0.91, 13.4)]
    public void A_usual_reagent_has_the_strength_that_follows_from_its_per_cent_and_density(string name, double density, double strength)
    {
        Reagent reagent = Reagent.Usual.Single(item => item.Name == name);
        Within(density, reagent.KilogramsPerLitre, 0);
        Within(strength, reagent.MolesPerLitre, 0);
        Within(strength, reagent.CalculatedMolesPerLitre, 0.01 * strength);
    }

    /// <summary>Alkalinity, as CaCO3, that coagulants use up. Source: computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Fe2(SO4)3", 6, 0.751)]
    [InlineData("FeCl3", 3, 0.926)]
    [InlineData("Fe", 3, 2.688)]
    [InlineData("Al2(SO4)3.14H2O", 6, 0.505)]
    public void Coagulants_use_up_alkalinity(string coagulant, int protons, double expected) =>
        Within(expected, StoichiometricRatio.AlkalinityAsCalciumCarbonate(coagulant, protons), 0.005 * expected);

    /// <summary>Source: water treatment text, example 12.7 (0.00053 kg of hydroxide per mg/L of ferric sulphate a m3).</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData("Fe2(SO4)3", 2, 0.5345)]
    [InlineData("FeCl3", 1, 0.659)]
    [InlineData("Fe", 1, 1.914)]
    public void Coagulants_leave_ferric_hydroxide(string coagulant, int moles, double expected) =>
        Within(expected, StoichiometricRatio.KilogramsPerKilogram("Fe(OH)3", coagulant, moles), 0.005 * expected);

    /// <summary>100 mg/L of solids and 40 mg/L of ferric sulphate, all settled: 0.1214 kg/m3. Source: water treatment text, example 12.7.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Sludge_of_a_coagulated_water() =>
        Within(0.1214, 0.100 + (0.040 * StoichiometricRatio.KilogramsPerKilogram("Fe(OH)3", "Fe2(SO4)3", 2)), 0.01 * 0.1214);

    /// <summary>Source: computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("H2SO4", 2, new[] { 0.8156, 0.7554, 0.5718, 1.0806, 1.0205 })]
    [InlineData("HCl", 1, new[] { 1.0970, 1.0161, 0.7690, 1.4534, 1.3725 })]
    [InlineData("HNO3", 1, new[] { 0.6347, 0.5879, 0.4450, 0.8410, 0.7942 })]
    public void Bases_neutralise_acids(string acid, int protons, double[] expected)
    {
        (string Formula, int Protons)[] bases = [("NaOH", 1), ("Ca(OH)2", 2), ("CaO", 2), ("Na2CO3", 2), ("CaCO3", 2)];
        for (int item = 0; item < bases.Length; item++)
        {
            double actual = StoichiometricRatio.Neutralisation(bases[item].Formula, bases[item].Protons, acid, protons);
            Within(expected[item], actual, 0.002 * expected[item]);
        }
    }

    /// <summary>Lime and caustic for the iron of 1 kg of ferric sulphate. Source: computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Ca(OH)2", 2, 0.556)]
    [InlineData("NaOH", 1, 0.600)]
    public void Bases_precipitate_the_iron_of_ferric_sulphate(string alkali, int protons, double expected) =>
        Within(expected, StoichiometricRatio.Neutralisation(alkali, protons, "Fe2(SO4)3", 6), 0.005 * expected);

    /// <summary>NaOH per metal and dry hydroxide per metal. Source: computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Cu", 2, 1.259, 1.535)]
    [InlineData("Zn", 2, 1.224, 1.520)]
    [InlineData("Ni", 2, 1.363, 1.580)]
    [InlineData("Cr", 3, 2.308, 1.981)]
    [InlineData("Fe", 3, 2.149, 1.914)]
    [InlineData("Cd", 2, 0.712, 1.303)]
    [InlineData("Pb", 2, 0.386, 1.164)]
    [InlineData("Al", 3, 4.447, 2.891)]
    public void Metals_take_caustic_and_leave_hydroxide(string metal, int charge, double caustic, double hydroxide)
    {
        Within(caustic, StoichiometricRatio.KilogramsPerKilogram("NaOH", metal, charge), 0.005 * caustic);
        Within(hydroxide, StoichiometricRatio.KilogramsPerKilogram($"{metal}(OH){charge}", metal, 1), 0.005 * hydroxide);
    }

    [Theory]
    [InlineData("Xx2")]
    [InlineData("Ca(OH")]
    [InlineData("CaOH)2")]
    public void A_formula_that_cannot_be_read_is_refused(string formula) => Assert.Throws<FormatException>(() => MolarMass.Of(formula));
}
