using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>What the treatment of chromium(VI) and cyanide takes and leaves, kg for each kg, by its stoichiometry.</summary>
public sealed class RedoxDoseTests
{
    /// <summary>2 H2CrO4 + 3 NaHSO3 + 3 H2SO4 = Cr2(SO4)3 + 3 NaHSO4 + 5 H2O. Source: environmental engineers' handbook, section 7.4; a trade text states 2.8 kg of metabisulphite for each kg. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Na2S2O5", 0.75, 2.742)]
    [InlineData("NaHSO3", 1.5, 3.002)]
    [InlineData("SO2", 1.5, 1.848)]
    [InlineData("FeSO4.7H2O", 3.0, 16.04)]
    public void Chromate_takes_its_reductant(string reductant, double moles, double expected) =>
        Within(expected, moles * MolarMass.Of(reductant) / MolarMass.Of("Cr"), 0.002 * expected);

    /// <summary>The model's own ratio of sulphite to chromium(VI) is that of the equation above.</summary>
    [Fact]
    public void The_model_reduces_by_the_same_equation() =>
        Within(3.002, ChromateReduction.SulphitePerChromate * MolarMass.Of("NaHSO3") / MolarMass.Of("Cr"), 0.006);

    /// <summary>Hydroxide for each kg of chromium, and what ferrous sulphate adds to it. Computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Cr(OH)3", 1.0, 1.981)]
    [InlineData("Fe(OH)3", 3.0, 6.17)]
    public void Reduced_chromium_leaves_sludge(string solid, double moles, double expected) =>
        Within(expected, moles * MolarMass.Of(solid) / MolarMass.Of("Cr"), 0.002 * expected);

    /// <summary>CN- + Cl2 + 2 OH- = OCN- + 2 Cl- + H2O, and 2.5 Cl2 in all to nitrogen. Source: wastewater handbook, chapter on cyanide; computed from atomic weights.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Cl2", 1.0, 2.725)]
    [InlineData("Cl2", 2.5, 6.813)]
    [InlineData("NaOCl", 1.0, 2.861)]
    [InlineData("NaOCl", 2.5, 7.153)]
    [InlineData("NaOH", 2.0, 3.075)]
    public void Cyanide_takes_its_chlorine_and_caustic(string oxidant, double moles, double expected) =>
        Within(expected, moles * MolarMass.Of(oxidant) / MolarMass.Of("CN"), 0.002 * expected);

    /// <summary>Lime is less soluble in warm water: about 1.85, 1.5 g/L at 0 and 25 C (handbooks, from memory).</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(1, 1.85)]
    [InlineData(25, 1.5)]
    public void Lime_dissolves_less_in_warm_water(double celsius, double expected)
    {
        WaterBatch batch = new WaterBatch(Tables.Minteq).With("Ca+2", 1).Allow("Portlandite");
        batch.Ph(celsius);
        Within(expected, batch.Dissolved("Ca+2") * MolarMass.Of("Ca(OH)2"), 0.15 * expected);
    }
}
