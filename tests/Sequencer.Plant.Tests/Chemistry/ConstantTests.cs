using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>The constants in the library's table against other published values.</summary>
public sealed class ConstantTests
{
    /// <summary>Source: USGS phreeqc.dat, at the lines given, and minteq.v4.dat where only that has the reaction.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData("OH-", -14.00, 0.005, "phreeqc.dat l.202")]
    [InlineData("HCO3-", 10.329, 0.005, "phreeqc.dat l.225")]
    [InlineData("H2CO3", 16.681, 0.005, "phreeqc.dat l.232")]
    [InlineData("HSO4-", 1.988, 0.01, "phreeqc.dat l.251")]
    [InlineData("H(Acetate)", 4.757, 0.01, "minteq.v4.dat l.8720")]
    [InlineData("CaOH+", -12.697, 0.05, "minteq.v4.dat l.1318; phreeqc.dat l.358 has -12.78")]
    [InlineData("FeOH+2", -2.19, 0.005, "phreeqc.dat l.532")]
    [InlineData("Fe2(OH)2+4", -2.854, 0.005, "minteq.v4.dat l.1038")]
    public void A_species_has_the_published_formation_constant(string species, double expected, double band, string source)
    {
        ChemicalSystem system = Tables.Minteq;
        Within(expected, system.Species[system.SpeciesIndex(species)].Constant.Log10(25), band, source);
    }

    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData("Portlandite", 22.80, 0.01, "wateq4f.dat l.3237")]
    [InlineData("Calcite", -8.45, 0.031, "phreeqc.dat l.964")]
    [InlineData("Gypsum", -4.55, 0.061, "phreeqc.dat l.1003")]
    [InlineData("Ferrihydrite", 3.191, 0.001, "minteq.v4.dat l.10993")]
    public void A_solid_has_the_published_solubility_constant(string solid, double expected, double band, string source)
    {
        ChemicalSystem system = Tables.Minteq;
        Within(expected, system.Solids[system.SolidIndex(solid)].Constant.Log10(25), band, source);
    }

    /// <summary>Source: handbook table of the IAPWS ionisation equation.</summary>
    [OutsideCheck(Basis.Published)]
    [Theory]
    [InlineData(0, 14.946, 0.01)]
    [InlineData(25, 13.995, 0.002)]
    [InlineData(50, 13.264, 0.005)]
    public void An_analytic_expression_gives_the_ion_product_of_water(double celsius, double expected, double band) => IonProduct(celsius, expected, band);

    /// <summary>Computed by IAPWS R11-07.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(10, 14.534)]
    [InlineData(15, 14.344)]
    [InlineData(20, 14.165)]
    [InlineData(30, 13.833)]
    [InlineData(40, 13.534)]
    public void An_analytic_expression_gives_it_in_between(double celsius, double expected) => IonProduct(celsius, expected, 0.005);

    private static void IonProduct(double celsius, double expected, double band)
    {
        ChemicalSystem system = Tables.With("usgs-water-ionisation.txt");
        Within(expected, -system.Species[system.SpeciesIndex("OH-")].Constant.Log10(celsius), band, "IAPWS");
    }

    /// <summary>
    /// The same values bound the error of the library's own table, which has one enthalpy only: 0.06 at 0 C, 0.04 at 50 C
    /// (computed). The reference program makes the same error with the same constants.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(0, 14.946, 0.06)]
    [InlineData(15, 14.344, 0.02)]
    [InlineData(25, 13.995, 0.005)]
    [InlineData(40, 13.534, 0.02)]
    [InlineData(50, 13.264, 0.04)]
    public void The_van_t_Hoff_ion_product_of_water_is_near_the_true_one(double celsius, double expected, double band)
    {
        ChemicalSystem system = Tables.Minteq;
        Within(expected, -system.Species[system.SpeciesIndex("OH-")].Constant.Log10(celsius), band, "IAPWS");
    }

    /// <summary>Source: Davies' equation with A = 0.509 (from memory), numbers computed.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(1, new[] { 0.9651, 0.9021, 0.8215, 0.7816, 0.7337 })]
    [InlineData(2, new[] { 0.8674, 0.6622, 0.4555, 0.3732, 0.2898 })]
    [InlineData(3, new[] { 0.7260, 0.3956, 0.1704, 0.1089, 0.0616 })]
    public void Davies_equation_gives_activity_coefficients(int charge, double[] expected)
    {
        double[] strengths = [0.001, 0.01, 0.05, 0.1, 0.5];
        for (int item = 0; item < strengths.Length; item++)
        {
            double actual = Math.Pow(10, ActivityCoefficient.Davies.Log10(charge, strengths[item], new(0.509, 0.328)));
            Within(expected[item], actual, 0.0005, "Davies");
        }
    }

    /// <summary>Source: A = 0.509 to 0.511 and B = 0.328 to 0.33 at 25 C in textbooks, from memory; A rises with temperature.</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Debye_Huckel_parameters_of_water_are_the_usual_ones()
    {
        DebyeHuckelConstants at25 = DebyeHuckelConstants.At(25);
        Within(0.510, at25.A, 0.001, "textbooks");
        Within(0.329, at25.B, 0.001, "textbooks");
        Assert.True(DebyeHuckelConstants.At(5).A < at25.A && at25.A < DebyeHuckelConstants.At(60).A);
    }

    [Fact]
    public void A_slope_of_an_activity_coefficient_is_its_derivative()
    {
        DebyeHuckelConstants water = DebyeHuckelConstants.At(25);
        foreach (ActivityCoefficient form in new[] { ActivityCoefficient.Davies, ActivityCoefficient.Uncharged, ActivityCoefficient.ExtendedDebyeHuckel(5.4, 0.1) })
        {
            const double Change = 1e-6;
            double difference = (form.Log10(2, 0.1 + Change, water) - form.Log10(2, 0.1 - Change, water)) / (2 * Change);
            Within(difference, form.Log10Slope(2, 0.1, water), 1e-7, form.ToString());
        }
    }
}
