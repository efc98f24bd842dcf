using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Chromium(VI), chromium(III) and sulphite at equilibrium, at 25 C.</summary>
public sealed class ChromiumTests
{
    private static readonly ChemicalSystem System = ChemicalSystem.DefaultWithChromium();

    /// <summary>
    /// Chromic acid gives up one proton whole (pKa about -0.1), and each HCrO4- and each half of Cr2O7-2 stands for one: its
    /// [H+] is its chromium. By hand with Davies' equation: 0.9647, 0.9013, 0.8285 at 1, 10, 50 mmol/L.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0.001, 3.016)]
    [InlineData(0.010, 2.045)]
    [InlineData(0.050, 1.383)]
    public void Chromic_acid_is_a_strong_acid(double total, double expected) =>
        Within(expected, new WaterBatch(System).With("CrO4-2", total).Ph(), 0.03, "charge balance by hand");

    /// <summary>Half neutralised from HCrO4- to CrO4-2 its pH is the constant of minteq.v4.dat l.4984, less 0.05 by Davies' equation; the dimer is 1 % at 0.1 mmol/L.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Chromate_buffers_at_its_second_constant() =>
        Within(6.51 - 0.02, new WaterBatch(System).With("CrO4-2", 1e-4).With("Na+", 1.5e-4).Ph(), 0.03, "minteq.v4.dat l.4984");

    /// <summary>2 CrO4-2 + 2 H+ = Cr2O7-2 + H2O, 14.56 (minteq.v4.dat l.5000): 2 HCrO4- = Cr2O7-2 + H2O has 10^1.54 = 34.7.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Strong_acid_chromate_is_in_part_dichromate()
    {
        WaterBatch batch = new WaterBatch(System, ActivityModel.Ideal).With("CrO4-2", 0.02);
        batch.HoldPh(3.0);
        double single = batch.Solver.Molality[System.SpeciesIndex("HCrO4-")];
        Within(34.7, batch.Solver.Molality[System.SpeciesIndex("Cr2O7-2")] / (single * single), 0.5, "minteq.v4.dat");
        Within(0.02, single + (2 * batch.Solver.Molality[System.SpeciesIndex("Cr2O7-2")]), 1e-4, "all of it");
    }

    /// <summary>A hydrogen salt of a weak acid has about the mean of its constants (textbook): (1.86 + 7.19) / 2, less some 0.1 by activity and dilution.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Sodium_bisulphite_stands_between_its_constants() =>
        Within(4.5, new WaterBatch(System).With("Na+", 0.05).With("SO3-2", 0.05).Ph(), 0.15, "textbook");

    /// <summary>Source: computed from the same constants of minteq.v4.dat by another program, ideal solution; mg/L of chromium.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(6, 1.69e-2)]
    [InlineData(7, 1.04e-3)]
    [InlineData(8, 1.31e-4)]
    [InlineData(9, 7.5e-5)]
    [InlineData(10, 3.4e-4)]
    [InlineData(11, 3.1e-3)]
    [InlineData(12, 3.1e-2)]
    public void Chromium_hydroxide_is_least_soluble_near_pH_9(double ph, double milligramsPerLitre)
    {
        WaterBatch batch = new WaterBatch(System, ActivityModel.Ideal).With("Cr(OH)2+", 0.01).Allow("Chromium_hydroxide");
        batch.HoldPh(ph);
        double found = batch.Dissolved("Cr(OH)2+") * MolarMass.Of("Cr") * 1000.0;
        Within(1.0, found / milligramsPerLitre, 0.03, "another program");
    }
}
