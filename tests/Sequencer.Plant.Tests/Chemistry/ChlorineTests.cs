using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Hypochlorite and what becomes of cyanide, in equilibrium.</summary>
public sealed class ChlorineTests
{
    /// <summary>pK 7.53 at 25 C (textbooks) and 7.75 at 5 C (drinking-water handbooks), both from memory: half of the free chlorine is HOCl there.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(25.0, 7.53, 0.02)]
    [InlineData(5.0, 7.75, 0.02)]
    public void Free_chlorine_is_half_hypochlorous_acid_at_its_pK(double celsius, double expected, double band)
    {
        ChemicalSystem system = ChemicalSystem.Everything;
        Within(expected, system.Species[system.SpeciesIndex("HOCl")].Constant.Log10(celsius), band, "textbooks, from memory");
    }

    /// <summary>Acid drives the gas out: at pH 2 in 0.1 mol/L of chloride [Cl2]/[HOCl] is 10^(3.35 - 2 - 1) = 2.2, without activity; at pH 7 there is none to speak of.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(2.0, 0.691)]
    [InlineData(7.0, 1.7e-5)]
    public void Acid_turns_hypochlorite_into_chlorine(double ph, double expected)
    {
        WaterBatch batch = new WaterBatch(ChemicalSystem.Everything.Restrict("OCl-", "Cl-"), ActivityModel.Ideal).With("OCl-", 1e-3).With("Cl-", 0.1);
        batch.HoldPh(ph);
        Within(expected, batch.Solver.Molality[batch.Solver.System.SpeciesIndex("Cl2")] / 1e-3, 0.02 * expected + 1e-7, "computed");
    }

    /// <summary>
    /// Each kg of chlorine takes 1.41 kg of alkalinity as CaCO3 in either stage: CN- + Cl2 + 2 OH- = OCN- + 2 Cl- + H2O, 2 OCN- + 3 Cl2 + 6 OH- = N2 + 2 HCO3- + 6 Cl- + 2 H2O. Two
    /// equivalents a mole are 100.09 / 70.906 (handbooks of wastewater have 1.41, from memory); here they follow from the charge of the water before and after, without activity, at pH 11 with 2 % of the cyanide as HCN.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Chlorine_takes_its_alkalinity()
    {
        const double Strength = 1e-4;
        double before = Charge(11.0, ("Cyanide-", Strength));
        double between = Charge(11.0, ("OCN-", Strength), ("Cl-", 2.0 * Strength));
        Within(1.41, (before - between) / Strength * MolarMass.Of("CaCO3") / 2.0 / MolarMass.Of("Cl2"), 0.02, "stage 1");
        double cyanate = Charge(8.3, ("OCN-", Strength));
        double carbonate = Charge(8.3, ("CO3-2", Strength), ("Cl-", 3.0 * Strength));
        Within(1.41, (cyanate - carbonate) / Strength / 1.5 * MolarMass.Of("CaCO3") / 2.0 / MolarMass.Of("Cl2"), 0.02, "stage 2");
    }

    private static double Charge(double ph, params (string Component, double Amount)[] held)
    {
        WaterBatch batch = new(ChemicalSystem.Everything.Restrict("Cyanide-", "OCN-", "OCl-", "Cl-", "CO3-2"), ActivityModel.Ideal);
        foreach ((string component, double amount) in held)
        {
            batch.With(component, amount);
        }

        batch.HoldPh(ph);
        return batch.Solver.Charge;
    }
}
