using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Chromium(VI) and sulphite in one stirred tank.</summary>
public sealed class ReductionTests
{
    /// <summary>mol/L of sulphite in the reagent; 1 L a minute into 1000 L is 1 mmol/L a minute.</summary>
    private const double Strength = 1.0;

    private static PlantModel Model(double ph, string more = "") => RunningPlant.Model($$$"""
        plant: 1
        name: Reduction tank
        ambient: 20 C
        supplies:
          chrome: {temperature: 20 C, pH: {{{ph.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)}}}, balanced_by: {{{(ph < 5.0 ? "chloride" : "sodium")}}}, dissolved: {chromate: 1.0 mmol/L, sodium: 1.0 mmol/L, chloride: 1.0 mmol/L, carbonate: {{{(ph < 5.0 ? 0.0 : 5.0):0.0}}} mmol/L} }
        reagents:
          SULPHITE: {dissolved: {sodium: {{{Strength:0.0}}} mol/L, sulphite: {{{Strength:0.0}}} mol/L}, temperature: 20 C, store: 50 L}
        tanks:
          TK1: {area: 1 m2, overflow: 2 m3, heel: 1 L, starts: {volume: 1 m3, water: chrome}, mixing: {dead_time: 1 s, lag: 2 s} }
        pumps:
          P1: {starts_in: 50 ms}
        lines:
          sulphite: {from: SULPHITE, to: TK1, rate: 60 L/h, through: [P1]}
        transmitters:
          AT1: {measures: redox, in: TK1, low: -500 mV, high: 1000 mV}
          {{{more}}}
        """);

    private static RunningPlant Dosed(double ph, double litres)
    {
        RunningPlant plant = RunningPlant.Start(Model(ph));
        plant.Command(true, "P1");
        plant.Run(litres * 60.0);
        plant.Command(false, "P1");
        return plant;
    }

    /// <summary>2 HCrO4- + 3 HSO3- + 5 H+ = 2 Cr+3 + 3 SO4-2 + 5 H2O: what is short limits the rest.</summary>
    [Fact]
    public void Three_sulphites_reduce_two_chromates_and_become_sulphate()
    {
        RunningPlant plant = Dosed(2.0, 0.6);
        plant.Run(3600.0);
        double volume = plant.Quantity("TK1.volume");
        double reduced = 1.0 - (plant.Quantity("TK1.chromate") * volume);
        Assert.Equal(0.4, reduced, 0.002);
        Assert.Equal(reduced, plant.Quantity("TK1.chromium") * volume, 1e-6);
        Assert.Equal(1.5 * reduced, plant.Quantity("TK1.sulphate") * volume, 1e-6);
        Assert.Equal(0.6 - (1.5 * reduced), plant.Quantity("TK1.sulphite") * volume, 1e-4);
        Assert.InRange(Math.Abs(plant.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(plant.Balances().Charge), 0.0, 1e-6);
    }

    /// <summary>
    /// kg of reductant for each kg of chromium(VI) that a run has reduced: 2 H2CrO4 + 3 NaHSO3 + 3 H2SO4 = Cr2(SO4)3 + 3 NaHSO4 + 5 H2O. Source: environmental engineers' handbook, section
    /// 7.4; a trade text states 2.8 kg of metabisulphite for each kg. Computed from atomic weights.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData("Na2S2O5", 2, 2.742)]
    [InlineData("NaHSO3", 1, 3.002)]
    [InlineData("SO2", 1, 1.848)]
    public void Chromate_takes_its_reductant(string reductant, int sulphurs, double expected)
    {
        RunningPlant plant = Dosed(2.0, 0.6);
        plant.Run(3600.0);
        double volume = plant.Quantity("TK1.volume");
        double used = 0.6 - (plant.Quantity("TK1.sulphite") * volume);
        double reduced = 1.0 - (plant.Quantity("TK1.chromate") * volume);
        Within(expected, used / sulphurs * MolarMass.Of(reductant) / (reduced * MolarMass.Of("Cr")), 0.005 * expected);
    }

    /// <summary>
    /// The five protons of two chromates: held at pH 2.5 a litre wants 2.5 mmol more of strong acid behind the reaction than
    /// before it, but for what sulphite, sulphate and chromium(III) bind at that pH, 0.3 by their constants.
    /// </summary>
    [Fact]
    public void The_reduction_takes_its_acid()
    {
        ChemicalSystem system = ChemicalSystem.DefaultWithChromium();
        EquilibriumSolver solver = new(system);
        bool[] none = new bool[system.Solids.Length];
        double Charge(double chromate, double chromium, double sulphite, double sulphate)
        {
            double[] totals = new double[system.Components.Length];
            totals[system.ComponentIndex("CrO4-2")] = chromate;
            totals[system.ComponentIndex("Cr(OH)2+")] = chromium;
            totals[system.ComponentIndex("SO3-2")] = sulphite;
            totals[system.ComponentIndex("SO4-2")] = sulphate;
            Assert.True(solver.SolveAtPh(totals, 25.0, 2.5, none).IsSolved);
            return solver.Charge;
        }

        // A charge left over is met by so much of a strong acid's anion.
        Assert.Equal(2.5e-3, Charge(0.0, 1e-3, 0.0, 1.5e-3) - Charge(1e-3, 0.0, 1.5e-3, 0.0), 0.4e-3);

        // The same in a run: what the acid of the water loses shows in its pH, without any acid being moved by the model.
        RunningPlant plant = Dosed(2.5, 1.5);
        double before = plant.Quantity("TK1.pH");
        plant.Run(7200.0);
        Assert.InRange(plant.Quantity("TK1.chromate"), 0.0, 0.05);
        Assert.InRange(plant.Quantity("TK1.pH") - before, 0.3, 2.0);
    }

    /// <summary>Orders of size from memory: minutes at pH 2, tens of minutes at pH 3, hours from pH 5 on.</summary>
    [Fact]
    public void The_reduction_is_slower_the_less_acid_the_water_is()
    {
        double[] minutes = [.. new[] { 2.0, 3.0, 5.0 }.Select(ph =>
        {
            // 99.9 % with 0.7 mmol/L of sulphite left over.
            return Math.Log(1000.0) / ChromateReduction.Rate(1.0, 0.7e-3, ph, ChromateReduction.DefaultReducedInSeconds) / 60.0;
        })];
        Assert.InRange(minutes[0], 1.0, 6.0);
        Assert.InRange(minutes[1], 15.0, 60.0);
        Assert.InRange(minutes[2], 600.0, 6000.0);
    }

    [Fact]
    public void Nothing_is_reduced_at_pH_9()
    {
        RunningPlant plant = Dosed(9.3, 0.2);
        double before = plant.Quantity("TK1.chromate");
        Assert.Equal(9.2, plant.Quantity("TK1.pH"), 0.2);
        plant.Run(4.0 * 3600.0);
        Assert.InRange(plant.Quantity("TK1.chromate") / before, 0.9999, 1.0);
        Assert.InRange(plant.Quantity("TK1.sulphite"), 0.19, 0.21);
    }

    /// <summary>By hand from the model's law: 380 + 60 log10(1000 umol / 1 umol) - 60 (2.0 - 2.5) = 590 mV; behind the end with 0.5 mmol/L left 380 - 162 - 60 (pH - 2.5).</summary>
    [Fact]
    public void A_redox_probe_sees_what_is_left()
    {
        RunningPlant plant = RunningPlant.Start(Model(2.0));
        plant.Run(10.0);
        Assert.Equal(590.0, plant.Reading("AT1"), 1.0);
        plant.Command(true, "P1");
        plant.Run(120.0);
        plant.Command(false, "P1");
        plant.Run(3600.0);
        Assert.Equal(380.0 - 162.0 - (60.0 * (plant.Quantity("TK1.pH") - 2.5)), plant.Reading("AT1"), 2.0);
    }

    [Fact]
    public void A_redox_probe_may_still_be_given_its_potential()
    {
        RunningPlant plant = RunningPlant.Start(Model(2.0, "AT2: {measures: redox, in: TK1, steady: 100 mV, low: -500 mV, high: 1000 mV}"));
        plant.Run(10.0);
        Assert.Equal(100.0, plant.Reading("AT2"), 1e-9);
    }

    /// <summary>4 mA at 0 and 20 mA at 100 NTU (arithmetic).</summary>
    [Fact]
    public void A_turbidity_meter_shows_what_the_description_says()
    {
        RunningPlant plant = RunningPlant.Start(Model(2.0, "AT3: {measures: turbidity, in: sulphite, steady: 4 NTU, low: 0 NTU, high: 100 NTU}"));
        plant.Run(10.0);
        Assert.Equal(4.0, plant.Reading("AT3"), 1e-9);
    }
}
