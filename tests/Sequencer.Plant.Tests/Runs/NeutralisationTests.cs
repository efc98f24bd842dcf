using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Acids titrated with bases in a tank of a plant.</summary>
public sealed class NeutralisationTests
{
    private const double SampleLitres = 1.0;

    /// <summary>kg of caustic that neutralise a kg of acid, 10 meq/L of it titrated to pH 7. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("H2SO4", 0.5, "sulphate: 0.5 mol/L", 0.8156)]
    [InlineData("HCl", 1.0, "chloride: 1 mol/L", 1.0970)]
    [InlineData("HNO3", 1.0, "nitrate: 1 mol/L", 0.6347)]
    public void Caustic_neutralises_acids(string acid, double strength, string sample, double expected) =>
        Titrated(acid, strength, sample, "NaOH", 1.0, "dissolved: {sodium: 1 mol/L}", 7.0, expected);

    /// <summary>kg of lime for a kg of acid, as slurry that dissolves, to pH 7. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("H2SO4", 0.5, "sulphate: 0.5 mol/L", 0.7554)]
    [InlineData("HCl", 1.0, "chloride: 1 mol/L", 1.0161)]
    [InlineData("HNO3", 1.0, "nitrate: 1 mol/L", 0.5879)]
    public void Lime_neutralises_acids(string acid, double strength, string sample, double expected) =>
        Titrated(acid, strength, sample, "Ca(OH)2", 0.5, "lime: 0.5 mol/L, lime_dissolves_in: 1 s", 7.0, expected);

    /// <summary>kg of soda for a kg of acid: in a covered tank both its protons are taken up where carbonic acid alone is left, at pH 4.3. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("H2SO4", 0.5, "sulphate: 0.5 mol/L", 1.0806)]
    [InlineData("HCl", 1.0, "chloride: 1 mol/L", 1.4534)]
    [InlineData("HNO3", 1.0, "nitrate: 1 mol/L", 0.8410)]
    public void Soda_neutralises_acids(string acid, double strength, string sample, double expected) =>
        Titrated(acid, strength, sample, "Na2CO3", 0.5, "dissolved: {sodium: 1 mol/L, carbonate: 0.5 mol/L}", 4.3, expected);

    private static void Titrated(string acid, double strength, string sample, string alkali, double alkaliStrength, string titrant, double ph, double expected)
    {
        Beaker beaker = new Beaker($"{{{sample}}}", titrant).Given(SampleLitres);
        Assert.InRange(beaker.Ph, 1.9, 2.3);
        double perKilogram = beaker.TitratedTo(ph, SampleLitres) * alkaliStrength * MolarMass.Of(alkali) / (beaker.SampleLitres * strength * MolarMass.Of(acid));
        Within(expected, perKilogram, 0.005 * expected);
        Assert.Equal(0.0, beaker.Plant.Balances().Substance, 1e-9);
    }
}
