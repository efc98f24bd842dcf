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

    /// <summary>Calcium hydroxide dissolves less in hot water: 0.0203 mol/L at 25 C, some 0.015 at 60 C (from memory).</summary>
    [Fact]
    public void In_hot_water_it_stops_sooner()
    {
        double warm = Limed("{temperature: 25 C, pH: 7.0, balanced_by: chloride, dissolved: {calcium: 0.01 mmol/L}}", 30.0).Quantity("TK1.calcium");
        double hot = Limed("{temperature: 60 C, pH: 7.0, balanced_by: chloride, dissolved: {calcium: 0.01 mmol/L}}", 30.0).Quantity("TK1.calcium");
        Assert.InRange(hot, 0.6 * warm, 0.9 * warm);
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
