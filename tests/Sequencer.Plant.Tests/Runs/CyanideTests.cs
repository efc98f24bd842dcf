using System.Globalization;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Cyanide and hypochlorite in one stirred tank of 1 m3.</summary>
public sealed class CyanideTests
{
    /// <summary>52 mg/L of cyanide.</summary>
    private const double Cyanide = 2.0;

    private static PlantModel Model(double ph = 11.2) => RunningPlant.Model($$$"""
        plant: 1
        name: Cyanide tank
        ambient: 20 C
        supplies:
          rinse: {temperature: 20 C, pH: {{{ph.ToString("0.0", CultureInfo.InvariantCulture)}}}, balanced_by: sodium, dissolved: {cyanide: {{{Cyanide:0.0}}} mmol/L, carbonate: 1.0 mmol/L, chloride: 0.5 mmol/L} }
        reagents:
          HYPO: {dissolved: {sodium: 4.0 mol/L, hypochlorite: 2.0 mol/L, chloride: 2.0 mol/L}, temperature: 20 C, store: 50 L}
          ACID: {dissolved: {sulphate: 1.0 mol/L}, temperature: 20 C, store: 50 L}
          SULPHITE: {dissolved: {sodium: 1.0 mol/L, sulphite: 1.0 mol/L}, temperature: 20 C, store: 50 L}
        tanks:
          TK1: {area: 1 m2, overflow: 2 m3, heel: 1 L, starts: {volume: 1 m3, water: rinse}, mixing: {dead_time: 1 s, lag: 2 s} }
        pumps:
          P1: {starts_in: 50 ms}
          P2: {starts_in: 50 ms}
          P3: {starts_in: 50 ms}
        lines:
          hypochlorite: {from: HYPO, to: TK1, rate: 60 L/h, through: [P1]}
          acid: {from: ACID, to: TK1, rate: 60 L/h, through: [P2]}
          sulphite: {from: SULPHITE, to: TK1, rate: 60 L/h, through: [P3]}
        transmitters:
          AT1: {measures: pH, in: TK1, low: 0 pH, high: 14 pH}
          AT2: {measures: redox, in: TK1, low: -500 mV, high: 1000 mV}
        """);

    private static RunningPlant Dosed(RunningPlant plant, string pump, double litres)
    {
        plant.Command(true, pump);
        plant.Run(litres * 60.0);
        plant.Command(false, pump);
        plant.Run(5.0);
        return plant;
    }

    private static double Moles(RunningPlant plant, string substance) => plant.Quantity($"TK1.{substance}") * plant.Quantity("TK1.volume");

    /// <summary>In scans of 10 s, for what is slow.</summary>
    private static void Wait(RunningPlant plant, double seconds)
    {
        for (double passed = 0.0; passed < seconds; passed += 10.0)
        {
            plant.Plant.Advance(10.0);
        }

        Assert.Null(plant.Plant.Failure);
    }

    private static double ChlorinePerCyanide(double molesOfHypochlorite, double molesOfCyanide) =>
        molesOfHypochlorite * MolarMass.Of("Cl2") / (molesOfCyanide * MolarMass.Of("CN"));

    /// <summary>Chlorine for each kg of cyanide to cyanate, in a run that has too little: CN- + Cl2 + 2 OH- = OCN- + 2 Cl- + H2O. Computed from atomic weights (handbooks have 2.73, from memory).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_first_stage_takes_a_hypochlorite_for_each_cyanide()
    {
        RunningPlant plant = Dosed(RunningPlant.Start(Model()), "P1", 0.6);
        Wait(plant, 3600.0);
        Within(2.725, ChlorinePerCyanide(1.2 - Moles(plant, "hypochlorite"), Cyanide - Moles(plant, "cyanide")), 0.006);
        Assert.Equal(0.0, Moles(plant, "hypochlorite"), 1e-5);
        Assert.Equal(1.2, Moles(plant, "cyanate") + Moles(plant, "cyanogen_chloride"), 0.003);
        Assert.InRange(Math.Abs(plant.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(plant.Balances().Volume), 0.0, 1e-9);
    }

    /// <summary>Chlorine for each kg of cyanide to nitrogen, in a run with some left over: 2 CN- + 5 Cl2 + 10 OH- = N2 + 2 HCO3- + 10 Cl- + 4 H2O. Computed from atomic weights (handbooks have 6.83, from memory).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Both_stages_take_two_and_a_half_for_each_cyanide()
    {
        RunningPlant plant = Dosed(RunningPlant.Start(Model()), "P1", 1.25);
        Wait(plant, 3600.0);
        Assert.Equal(0.0, Moles(plant, "cyanogen_chloride"), 1e-4);
        Assert.InRange(Moles(plant, "cyanate"), 0.95 * Cyanide, Cyanide);
        while (plant.Quantity("TK1.pH") > 8.6)
        {
            Dosed(plant, "P2", 0.05);
        }

        Dosed(plant, "P1", 2.25);
        Wait(plant, 4.0 * 3600.0);
        double left = Moles(plant, "cyanate") / Cyanide;
        Assert.InRange(left, 0.0, 1e-3);
        Within(6.813, ChlorinePerCyanide(7.0 - Moles(plant, "hypochlorite"), Cyanide), 0.002 * 6.813);
        Assert.Equal(Cyanide + 1.0, Moles(plant, "carbonate"), 0.005);
        Assert.Equal(7.0 + 0.5 + 7.0, Moles(plant, "chloride") + Moles(plant, "hypochlorite"), 0.01);
        Assert.InRange(Math.Abs(plant.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(plant.Balances().Charge), 0.0, 1e-6);
    }

    /// <summary>
    /// kg of caustic that the first stage with chlorine takes for each kg of cyanide, CN- + Cl2 + 2 OH- = OCN- + 2 Cl- + H2O: what brings the water back to pH 12. Chlorine as a
    /// water stronger than any, in place of the gas, and salt that keeps the activities even. Source: wastewater handbook, chapter on cyanide; computed from atomic weights.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_first_stage_with_chlorine_takes_its_caustic()
    {
        Beaker beaker = new Beaker(
            "{hypochlorite: 5 mol/L, chloride: 5 mol/L}",
            "dissolved: {sodium: 5 mol/L}",
            water: "{temperature: 25 C, pH: 12.0, balanced_by: sodium, dissolved: {cyanide: 2 mmol/L, nitrate: 500 mmol/L}}").Given(0.036);
        beaker.Wait(600.0);
        double oxidised = 0.2 - (beaker.Plant.Quantity("TK1.cyanide") * beaker.Plant.Quantity("TK1.volume"));
        Assert.Equal(0.18, oxidised, 0.001);
        Within(3.075, beaker.TitratedTo(12.0, 0.072) * 5.0 * MolarMass.Of("NaOH") / (oxidised * MolarMass.Of("CN")), 0.015 * 3.075);
    }

    /// <summary>What is left of the gas after 20 min: exp(-1200 / 220) and less from pH 11 on by the model's law, 0.9 of it at pH 9.3, which the dose lifts a little.</summary>
    [Theory]
    [InlineData(11.5, -1e-4, 0.01)]
    [InlineData(9.3, 0.85, 0.92)]
    public void Cyanogen_chloride_stays_where_there_is_too_little_alkali(double ph, double least, double most)
    {
        RunningPlant plant = Dosed(RunningPlant.Start(Model(ph)), "P1", 0.05);
        Wait(plant, 1200.0);
        Assert.InRange(Moles(plant, "cyanogen_chloride") / 0.1, least, most);
    }

    /// <summary>Half of a cyanide is prussic acid at its pK of 9.21, 0.84 at 8.5 and 0.016 at 11, without activity; the model's water has activities, which shift it by 0.05 of a unit.</summary>
    [Theory]
    [InlineData(11.0, 0.016, 0.003)]
    [InlineData(9.2, 0.5, 0.04)]
    [InlineData(8.5, 0.837, 0.03)]
    public void Cyanide_turns_into_prussic_acid_below_its_pK(double ph, double share, double band)
    {
        RunningPlant plant = RunningPlant.Start(Model(ph));
        plant.Run(1.0);

        // 9.21 is the constant at 25 C; at 20 C it is 43.6 kJ/mol later, 0.13.
        double shifted = 1.0 / (1.0 + (((1.0 / share) - 1.0) * Math.Pow(10.0, -0.13)));
        Assert.Equal(shifted, plant.Quantity("TK1.hydrogen_cyanide") / Cyanide, band);
    }

    /// <summary>Orders of size from memory: half an hour to an hour at pH 8.5 with 0.7 mmol/L left over, most of a day at pH 10.</summary>
    [Fact]
    public void Cyanate_goes_slower_the_more_alkali_there_is()
    {
        double[] minutes = [.. new[] { 8.5, 10.0 }.Select(ph =>
            Math.Log(100.0) / CyanideOxidation.CyanateRate(1.0, 0.7e-3, ph, CyanideOxidation.DefaultCyanateOxidisedInSeconds) / 60.0)];
        Assert.InRange(minutes[0], 20.0, 60.0);
        Assert.InRange(minutes[1], 500.0, 2000.0);
        Assert.Equal(
            CyanideOxidation.CyanateRate(1.0, 1.0, 7.0, 1.0), CyanideOxidation.CyanateRate(1.0, 1.0, 5.0, 1.0));
    }

    /// <summary>
    /// What a program does, scan by scan: pulses of hypochlorite until the potential says that cyanide is gone, then acid, then pulses until it says that chlorine stays. Practice
    /// has -400 to -200 mV before, 200 to 450 mV behind the first stage and 600 to 800 mV behind the second (a wastewater handbook's chapter on cyanide); the figures of the model were chosen so.
    /// </summary>
    [Fact]
    public void A_probe_shows_the_end_of_either_stage()
    {
        RunningPlant plant = RunningPlant.Start(Model());
        plant.Run(10.0);
        Assert.InRange(plant.Reading("AT2"), -400.0, -200.0);
        double first = Pulses(plant, 350.0);
        Assert.InRange(first, Cyanide, 1.5 * Cyanide);
        Wait(plant, 1800.0);
        Assert.InRange(plant.Reading("AT2"), 200.0, 450.0);
        Assert.Equal(0.0, Moles(plant, "cyanide"), 1e-5);
        while (plant.Reading("AT1") > 8.5)
        {
            Dosed(plant, "P2", 0.05);
        }

        double second = Pulses(plant, 620.0);
        Wait(plant, 1800.0);
        second += Pulses(plant, 620.0);
        Assert.InRange(plant.Reading("AT2"), 600.0, 800.0);
        Assert.InRange(first + second, 2.3 * Cyanide, 3.2 * Cyanide);
        Assert.InRange(Moles(plant, "cyanate") / Cyanide, 0.0, 0.1);
    }

    /// <summary>Pulses of 0.05 L with a minute between, until the reading stays; mol given.</summary>
    private static double Pulses(RunningPlant plant, double millivolts)
    {
        double given = 0.0;
        while (plant.Reading("AT2") < millivolts)
        {
            Dosed(plant, "P1", 0.05);
            Wait(plant, 60.0);
            given += 0.1;
            Assert.True(given < 20.0, $"{plant.Reading("AT2")} mV after {given} mol");
        }

        return given;
    }

    /// <summary>OCl- + SO3-2 = Cl- + SO4-2.</summary>
    [Fact]
    public void Sulphite_takes_away_what_is_left_of_hypochlorite()
    {
        RunningPlant plant = Dosed(RunningPlant.Start(Model()), "P1", 1.5);
        double over = Moles(plant, "hypochlorite");
        Assert.InRange(over, 0.9, 1.01);
        Dosed(plant, "P3", 0.5);
        Wait(plant, 60.0);
        Assert.Equal(over - 0.5, Moles(plant, "hypochlorite"), 0.01);
        Assert.Equal(0.5, Moles(plant, "sulphate"), 0.01);
        Assert.InRange(Math.Abs(plant.Balances().Substance), 0.0, 1e-9);
    }
}
