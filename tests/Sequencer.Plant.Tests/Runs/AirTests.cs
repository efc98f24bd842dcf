using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Carbon dioxide between water and air, and what precipitates by weight.</summary>
public sealed class AirTests
{
    private static PlantModel Model(string air) => RunningPlant.Model($$$"""
        plant: 1
        name: Open tank
        ambient: 25 C
        chemistry: {precipitates: [ferrihydrite, copper_hydroxide]}
        supplies:
          water: {temperature: 25 C, pH: 6.5, balanced_by: sodium, dissolved: {carbonate: 1.7 mmol/L}}
          metal: {temperature: 25 C, pH: 9.5, balanced_by: sodium, dissolved: {iron: 1 mmol/L, copper: 1 mmol/L, nitrate: 5 mmol/L}}
        reagents:
          CAUSTIC: {dissolved: {sodium: 10 mol/L}, temperature: 25 C, store: 100 L}
        tanks:
          TK1: {area: 2 m2, overflow: 5 m3, heel: 10 L, starts: {volume: 1 m3, water: water}{{{air}}}, mixing: {dead_time: 1 s, lag: 5 s}}
          TK2: {area: 2 m2, overflow: 5 m3, heel: 10 L, starts: {volume: 1 m3, water: metal}, mixing: {dead_time: 1 s, lag: 5 s}}
        """);

    /// <summary>
    /// 10^-1.468 x 4.2e-4 = 1.43e-5 mol/L stay; the alkalinity does, 1.7 mmol/L / (1 + 10^(6.352 - 6.5)) = 0.99 meq/L. So pH = 6.352 + log10(0.99e-3 / 1.43e-5) = 8.19,
    /// with the activities of 1 mmol/L 0.01 lower. (Alkaline waters of 1 meq/L stand at 8.2 to 8.3 in air: textbooks, from memory.)
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Water_comes_to_the_pH_that_air_gives_it()
    {
        RunningPlant tank = RunningPlant.Start(Model(", air_equalises_in: 10 min"));
        double before = tank.Quantity("TK1.carbonate");
        tank.Run(600.0);
        Assert.InRange(tank.Quantity("TK1.pH"), 6.8, 7.1);
        tank.Run(4.0 * 3600.0);
        Within(8.18, tank.Quantity("TK1.pH"), 0.03);
        Assert.InRange(tank.Quantity("TK1.carbonate"), 0.95, before - 0.6);
        Assert.Equal(0.0, tank.Balances().Substance, 1e-9);
    }

    [Fact]
    public void A_covered_tank_keeps_it()
    {
        RunningPlant tank = RunningPlant.Start(Model(""));
        tank.Run(3600.0);
        Assert.Equal(6.5, tank.Quantity("TK1.pH"), 1e-3);
    }

    /// <summary>Henry's constant of the table at 25 C; at 10 C half as much again (textbooks: 10^-1.27 there, from memory).</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Cold_water_keeps_more()
    {
        Within(1.430e-5, TankAir.OfAir(25.0), 0.005e-5);
        Within(Math.Pow(10.0, -1.27) * 4.2e-4, TankAir.OfAir(10.0), 0.1e-5);
    }

    /// <summary>1 mmol/L of each: 106.87 and 97.56 mg/L, less what stays dissolved.</summary>
    [Fact]
    public void What_precipitates_has_a_weight()
    {
        RunningPlant tank = RunningPlant.Start(Model(""));
        tank.Run(1.0);
        Assert.Equal(106.87 + 97.56, tank.Quantity("TK2.precipitate"), 0.2);
        Assert.Equal(0.0, tank.Quantity("TK1.precipitate"), 1e-9);
    }
}
