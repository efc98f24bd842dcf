using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Lime slurry in a tank: it dissolves as far as its ion product lets it, whatever calcium is there.</summary>
public sealed class LimeTests
{
    private static RunningPlant Tank(string water) => RunningPlant.Start(RunningPlant.Model($$$"""
        plant: 1
        name: Limed tank
        ambient: 25 C
        supplies:
          water: {{{water}}}
        reagents:
          LIME: {lime: 1.35 mol/L, lime_dissolves_in: 15 s, temperature: 25 C, store: 500 L}
        tanks:
          TK1: {area: 1 m2, overflow: 2 m3, heel: 10 L, starts: {volume: 1 m3, water: water}, mixing: {dead_time: 0 s, lag: 2 s}}
        pumps: {P1: {starts_in: 50 ms}}
        lines: {lime: {from: LIME, to: TK1, rate: 3600 L/h, through: [P1]}}
        """));

    private static RunningPlant Limed(string water, double seconds)
    {
        RunningPlant tank = Tank(water);
        tank.Command(true, "P1");
        tank.Run(seconds);
        tank.Command(false, "P1");
        tank.Run(900.0);
        Assert.InRange(Math.Abs(tank.Balances().Substance), 0.0, 1e-9);
        return tank;
    }

    /// <summary>25 mmol/L of calcium are more than lime alone brings into water: acid takes 2.7 mmol/L of lime all the same.</summary>
    [Fact]
    public void In_acid_lime_dissolves_however_much_calcium_is_there()
    {
        RunningPlant tank = Limed("{temperature: 25 C, pH: 2.0, balanced_by: chloride, dissolved: {calcium: 25 mmol/L}}", 2.0);
        Assert.InRange(tank.Quantity("TK1.pH"), 2.0, 2.5);
        Assert.Equal(0.0, tank.Quantity("TK1.undissolved_lime"), 1e-5);
        Assert.Equal((25.0 + 2.7) / 1.002, tank.Quantity("TK1.calcium"), 0.1);
    }

    /// <summary>Source: J. Res. NBS 56 (1956) 305: saturated at 25 C 0.0203 mol/L, pH 12.45. Ours of MINTEQ's constant and Davies' activities.</summary>
    [Fact]
    public void In_water_it_stops_at_saturation()
    {
        RunningPlant tank = Limed("{temperature: 25 C, pH: 7.0, balanced_by: chloride, dissolved: {calcium: 0.01 mmol/L}}", 30.0);
        Assert.Equal(20.3, tank.Quantity("TK1.calcium"), 1.0);
        Assert.Equal(12.45, tank.Quantity("TK1.pH"), 0.05);
        Assert.InRange(tank.Quantity("TK1.undissolved_lime"), 15.0, 21.0);
    }

    /// <summary>Lime is less soluble in warm water, g/L at 1, 25 and 60 C: about 1.85, 1.5 (handbooks, from memory) and between that and 0.7 at 100 C on a straight line, 1.13.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData("1 C", 1.85, 0.15)]
    [InlineData("25 C", 1.5, 0.15)]
    [InlineData("60 C", 1.13, 0.2)]
    public void Lime_dissolves_less_in_warm_water(string temperature, double expected, double part)
    {
        RunningPlant tank = Limed($"{{temperature: {temperature}, pH: 7.0, balanced_by: chloride, dissolved: {{calcium: 0.01 mmol/L}}}}", 30.0);
        Within(expected, tank.Quantity("TK1.calcium") * 1e-3 * MolarMass.Of("Ca(OH)2"), part * expected);
    }

    /// <summary>
    /// Far from saturation lime dissolves with its time constant, half way to it at about half that rate: with 27 mmol/L of lime, and 20.3 mmol/L at which it stops, the rate
    /// by hand is S / 15 s x (1 - calcium / 20.3), but for activities.
    /// </summary>
    [Fact]
    public void It_dissolves_slower_the_nearer_the_water_is_to_saturation()
    {
        RunningPlant tank = Tank("{temperature: 25 C, pH: 7.0, balanced_by: chloride, dissolved: {calcium: 0.01 mmol/L}}");
        tank.Command(true, "P1");
        tank.Run(20.0);
        tank.Command(false, "P1");
        tank.Run(10.0);
        foreach (int _ in Enumerable.Range(0, 4))
        {
            double calcium = tank.Quantity("TK1.calcium");
            double solid = tank.Quantity("TK1.undissolved_lime");
            tank.Run(1.0);
            double rate = (solid + tank.Quantity("TK1.undissolved_lime")) / 2.0 / 15.0 * (1.0 - ((calcium + tank.Quantity("TK1.calcium")) / 2.0 / 20.5));
            Assert.InRange(tank.Quantity("TK1.calcium") - calcium, 0.75 * rate, 1.25 * rate);
            tank.Run(4.0);
        }
    }

    /// <summary>0.2 mol/L of sodium hydroxide holds calcium down to about K / (0.2 g)^2, half a mmol/L: lime stays as it is.</summary>
    [Fact]
    public void In_caustic_hardly_any_dissolves()
    {
        RunningPlant tank = Limed("{temperature: 25 C, pH: 13.1, balanced_by: sodium, dissolved: {chloride: 0.1 mmol/L, calcium: 0.01 mmol/L}}", 10.0);
        Assert.InRange(tank.Quantity("TK1.calcium"), 0.1, 3.0);
        Assert.InRange(tank.Quantity("TK1.undissolved_lime"), 9.0, 13.4);
    }
}
