using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Published and computed pH examples; mol/L stand for mol/kg. "Ideal" is without activities, as textbooks reckon.</summary>
public sealed class TitrationExampleTests
{
    private static readonly ChemicalSystem Textbook = Tables.With("textbook-constants.txt");

    /// <summary>25.0 mL of 0.100 M HCl and less than 25 mL of 0.100 M NaOH: the acid that is left over both volumes, computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0, 1.000)]
    [InlineData(5, 1.176)]
    [InlineData(10, 1.368)]
    [InlineData(12.5, 1.477)]
    [InlineData(20, 1.954)]
    [InlineData(22, 2.195)]
    [InlineData(24, 2.690)]
    [InlineData(24.5, 2.996)]
    [InlineData(24.9, 3.698)]
    public void Strong_acid_on_its_way_to_the_equivalence_point(double millilitres, double expected) =>
        Titrated(25, "Cl-", 0.1, millilitres, 0.1, expected);

    /// <summary>25.0 mL of 0.100 M HCl and 25 mL of 0.100 M NaOH and more. Source: open chemistry textbook, Table 14.4.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(25, 7.00)]
    [InlineData(25.1, 10.30)]
    [InlineData(25.5, 11.00)]
    [InlineData(26, 11.29)]
    [InlineData(28, 11.75)]
    [InlineData(30, 11.96)]
    [InlineData(35, 12.22)]
    [InlineData(40, 12.36)]
    [InlineData(45, 12.46)]
    [InlineData(50, 12.52)]
    public void Strong_acid_titrated_with_strong_base(double millilitres, double expected) =>
        Titrated(25, "Cl-", 0.1, millilitres, 0.1, expected);

    /// <summary>25.0 mL of 0.100 M acetic acid with 25 mL of 0.100 M NaOH. Source: open chemistry textbook, Table 14.4.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Acetic_acid_is_basic_at_its_equivalence_point() => Titrated(25, "Acetate-", 0.1, 25, 0.1, 8.72);

    /// <summary>25.0 mL of 0.100 M acetic acid before that, Ka 1.8e-5: computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0, 2.875)]
    [InlineData(5, 4.145)]
    [InlineData(10, 4.569)]
    [InlineData(12.5, 4.745)]
    [InlineData(20, 5.347)]
    [InlineData(24, 6.125)]
    [InlineData(24.5, 6.435)]
    [InlineData(24.9, 7.141)]
    public void Acetic_acid_titrated_with_strong_base(double millilitres, double expected) =>
        Titrated(25, "Acetate-", 0.1, millilitres, 0.1, expected);

    /// <summary>Source: exercise text (the problem seen), answer computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Acetic_acid_nine_tenths_neutralised() => Titrated(50, "Acetate-", 0.1, 45, 0.1, 5.70);

    /// <summary>20 mL of 0.10 M HCl. Source: exercise text; its 10.60 at 20.1 mL and 11.50 at 21 mL are wrong, computed 10.40 and 11.39.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(10, 1.48)]
    [InlineData(18, 2.28)]
    [InlineData(19, 2.59)]
    [InlineData(19.9, 3.60)]
    [InlineData(20, 7.00)]
    [InlineData(20.1, 10.40)]
    [InlineData(21, 11.39)]
    [InlineData(22, 11.68)]
    public void Twenty_millilitres_of_strong_acid(double millilitres, double expected) =>
        Titrated(20, "Cl-", 0.1, millilitres, 0.1, expected);

    /// <summary>Source: computed with K2 of USGS phreeqc.dat l.251, first proton strong.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0.001, 2.733)]
    [InlineData(0.005, 2.106)]
    [InlineData(0.01, 1.848)]
    [InlineData(0.05, 1.240)]
    [InlineData(0.1, 0.964)]
    public void Sulphuric_acid_is_not_two_strong_protons(double total, double expected) =>
        Within(expected, Ideal().With("SO4-2", total).Ph(), 0.01);

    /// <summary>Alkali demand, eq/L, of an acid sulphate waste of known pH. Source: computed with K2 of USGS phreeqc.dat l.251.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(1.0, 0.1829)]
    [InlineData(1.5, 0.0508)]
    [InlineData(2.0, 0.01327)]
    [InlineData(2.5, 0.003584)]
    public void Alkali_demand_of_a_sulphuric_waste_follows_from_its_pH(double ph, double expected)
    {
        WaterBatch waste = Ideal().With("SO4-2", 1e-3);
        for (int round = 0; round < 30; round++)
        {
            waste.HoldPh(ph);
            waste["SO4-2"] += waste.Solver.Charge / 2;
        }

        Within(expected, 2 * waste["SO4-2"], 0.01 * expected);
    }

    /// <summary>HCl of pH 2 and NaOH of pH 12 mixed. Source: computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(1, 1, 7.00)]
    [InlineData(2, 1, 2.48)]
    [InlineData(1, 2, 11.52)]
    public void Two_strong_solutions_mixed(double acid, double alkali, double expected) =>
        Titrated(acid, "Cl-", 0.01, alkali, 0.01, expected);

    /// <summary>10 m3 of HCl at pH 2.00 to pH 7 without activity: 100 mol. Source: computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Sodium_hydroxide_to_neutralise_ten_cubic_metres_of_acid()
    {
        WaterBatch acid = Ideal().With("Cl-", 0.01);
        Within(2.00, acid.Ph(), 0.001);
        acid.HoldPh(7);
        double moles = -acid.Solver.Charge * 10_000;
        Within(100, moles, 1);
        Within(7.00, acid.With("Na+", moles / 10_000).Ph(), 0.01);
    }

    private static WaterBatch Ideal() => new(Textbook, ActivityModel.Ideal);

    private static void Titrated(double sample, string acid, double acidity, double added, double alkalinity, double expected)
    {
        double volume = sample + added;
        WaterBatch batch = Ideal().With(acid, sample * acidity / volume).With("Na+", added * alkalinity / volume);
        Within(expected, batch.Ph(), 0.01);
    }
}
