using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;
using Sequencer.Plant.Settling;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A tank in which iron hydroxide settles when nobody stirs: 1.5 mmol/L of it are 0.16 g/L, in 4 m3 on 2 m2.</summary>
public sealed class SettlingTests
{
    private const double Litres = 4000.0;
    private const double Floc = 15.0;
    private const double Bed = 20.0;
    private const double Viscosity = 1.0017e-3;
    private const double Grams = 1.5e-3 * 106.87;

    internal static readonly PlantModel Model = RunningPlant.Model("""
        plant: 1
        name: Settling tank
        ambient: 20 C
        chemistry: {precipitates: [ferrihydrite]}
        supplies:
          water: {temperature: 20 C, pH: 7.5, balanced_by: sodium, dissolved: {iron: 1.5 mmol/L, chloride: 4.5 mmol/L, carbonate: 2 mmol/L}}
        tanks:
          TK1:
            area: 2 m2
            overflow: 5 m3
            heel: 10 L
            starts: {volume: 4 m3, water: water}
            mixing: {agitator: AG1, power: 60 W, dead_time: 1 s, lag: 20 s, unmixed_lag: 1 h}
            settling: {floc_density: 15 g/L, grain_density: 3 kg/L, floc_size: 0.4 mm, bed_density: 20 g/L, holds: {iron: 106.87 g/mol}}
          TK2: {area: 2 m2, overflow: 5 m3, heel: 10 L, starts: {volume: 20 L, water: water}, mixing: {dead_time: 1 s, lag: 20 s}}
        pumps: {P1: {starts_in: 50 ms}, P2: {starts_in: 50 ms}}
        agitators: {AG1: {starts_in: 1 s}}
        lines:
          decant: {from: TK1, to: TK2, rate: 8 m3/h, through: [P1], draws_below: 150 mm}
          sludge: {from: TK1, to: pit, rate: 1 m3/h, through: [P2]}
        transmitters:
          AT1: {measures: turbidity, in: decant, per_suspended: 1000 NTU per g/L, low: 0 NTU, high: 500 NTU}
          AT2: {measures: turbidity, in: sludge, per_suspended: 1000 NTU per g/L, low: 0 NTU, high: 50000 NTU}
        """);

    /// <summary>
    /// 60 W in 4 m3 shear 122 1/s: in flocs are 5.1e-5 / (5.1e-5 + 1.1e-7 x 122) = 0.79, of 0.4 mm x sqrt(50 / 122) = 0.256 mm.
    /// </summary>
    [Fact]
    public void Stirred_long_enough_it_comes_to_what_catching_and_breaking_leave()
    {
        RunningPlant tank = Flocculated();
        double shear = Math.Sqrt(60.0 / (Viscosity * Litres * 1e-3));
        Assert.Equal(122.4, shear, 0.1);
        Assert.Equal(Flocculation.Largest(0.4, shear), tank.Quantity("TK1.floc_size"), 0.002);
        Assert.Equal(1.0 - Flocculation.Even(1.0, shear, Flocculation.Breaking), tank.Quantity("TK1.dispersed") / 1e3 / Grams, 0.005);
        Assert.Equal(0.0, tank.Quantity("TK1.bed"), 0.5);
        Assert.Equal(1000.0 * Grams, tank.Reading("AT1"), 2.0);
    }

    /// <summary>Settled for two hours and stirred for four: no clear water is left, and none is owed, in any second of it.</summary>
    [Fact]
    public void Stirred_up_again_its_surface_is_the_water_s_own()
    {
        RunningPlant tank = Flocculated();
        tank.Command(false, "AG1");
        tank.Run(7200.0);
        tank.Command(true, "AG1");
        tank.Run(600.0);
        for (int second = 0; second < 14_400; second++)
        {
            tank.Plant.Advance(1.0);
            Assert.Equal(tank.Quantity("TK1.level"), tank.Quantity("TK1.interface"), 2e-5);
        }
    }

    /// <summary>Flocs of 15 g/L of grains of 3 kg/L are 10 g/L heavier than water: 3.6e-4 m/s by Stokes, (1 - c/15)^4.65 of it in their crowd.</summary>
    [Fact]
    public void Its_surface_falls_as_Stokes_and_Richardson_and_Zaki_say()
    {
        RunningPlant tank = Flocculated();
        tank.Command(false, "AG1");
        tank.Run(60.0);
        double size = tank.Quantity("TK1.floc_size") * 1e-3;
        double crowd = Grams - (tank.Quantity("TK1.dispersed") * 1e-3);
        double velocity = 9.80665 * size * size * Floc * (2.0 / 3.0) / (18.0 * Viscosity) * Math.Pow(1.0 - (crowd / Floc), 4.65);
        double before = tank.Quantity("TK1.interface");
        tank.Run(1800.0);
        Assert.Equal(velocity * 1800.0, before - tank.Quantity("TK1.interface"), 0.02 * velocity * 1800.0);
        tank.Run(7200.0);
        double bed = (Grams * Litres) - (tank.Quantity("TK1.dispersed") * 1e-3 * (Litres - tank.Quantity("TK1.bed")));
        Assert.Equal(bed / Bed, tank.Quantity("TK1.bed"), 0.01 * bed / Bed);
        Assert.Equal(0.0, tank.Balances().Substance, 1e-9);
    }

    /// <summary>
    /// The surface of flocs falls, in m/h, as the formula of another textbook has it for spheres in each other's way, v_0 e^2 10^(-1.82 (1 - e)), e the share of liquid: within 2 % while flocs are a
    /// hundredth of the water. Source: Geankoplis, Transport Processes and Unit Operations, section 14.3; computed. At its example 14.3-2 (0.38 of solids) Richardson and Zaki's power is 38 % above it.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Its_surface_falls_as_another_formula_has_it()
    {
        RunningPlant tank = Flocculated();
        tank.Command(false, "AG1");
        tank.Run(60.0);
        double size = tank.Quantity("TK1.floc_size") * 1e-3;
        double liquid = 1.0 - ((Grams - (tank.Quantity("TK1.dispersed") * 1e-3)) / Floc);
        double velocity = 9.80665 * size * size * Floc * (2.0 / 3.0) / (18.0 * Viscosity) * liquid * liquid * Math.Pow(10.0, -1.82 * (1.0 - liquid));
        double before = tank.Quantity("TK1.interface");
        tank.Run(1800.0);
        Within(3600.0 * velocity, 2.0 * (before - tank.Quantity("TK1.interface")), 0.02 * 3600.0 * velocity);
    }

    [Fact]
    public void What_is_drawn_depends_on_where_and_whether_it_has_settled()
    {
        RunningPlant settled = Flocculated();
        settled.Command(false, "AG1");
        settled.Run(3.0 * 3600.0);
        Assert.Equal(settled.Quantity("TK1.dispersed"), settled.Reading("AT1"), 0.5);
        Assert.True(settled.Reading("AT2") > 5000.0);
        settled.Command(true, "P1");
        settled.Run(1200.0);
        Assert.Equal(settled.Quantity("TK1.dispersed") * 1e-3 / 0.10687, settled.Quantity("TK2.iron"), 0.06);
        settled.Command(false, "P1");
        // A band of 50 mm, 100 L, is drawn from: what lies in it goes as exp(-83.3 L / 100 L).
        double before = settled.Quantity("TK1.bed");
        settled.Command(true, "P2");
        settled.Run(300.0);
        Assert.Equal(before * Math.Exp(-0.833), settled.Quantity("TK1.bed"), 0.3);
        Assert.Equal(0.0, settled.Balances().Substance, 1e-9);
        RunningPlant stirred = Flocculated();
        stirred.Command(true, "P1");
        stirred.Run(1200.0);
        Assert.Equal(1.5, stirred.Quantity("TK2.iron"), 0.01);
    }

    [Fact]
    public void Stirred_again_it_is_up_again()
    {
        RunningPlant tank = Flocculated();
        tank.Command(false, "AG1");
        tank.Run(3.0 * 3600.0);
        Assert.True(tank.Quantity("TK1.bed") > 20.0);
        tank.Command(true, "AG1");
        tank.Run(200.0);
        Assert.Equal(0.0, tank.Quantity("TK1.bed"), 0.1);
        Assert.Equal(2.0, tank.Quantity("TK1.interface"), 0.01);
        Assert.Equal(1000.0 * Grams, tank.Reading("AT1"), 1.0);
    }

    private static RunningPlant Flocculated()
    {
        RunningPlant tank = RunningPlant.Start(Model);
        tank.Command(true, "AG1");
        tank.Run(1800.0);
        return tank;
    }

    [Fact]
    public void A_step_that_is_tried_and_draws_more_than_there_is_has_rates()
    {
        PlantParts parts = new(Model);
        double[] state = parts.InitialState();
        state[parts.Layout.Volume(0)] = -2.5;
        double[] rates = new double[state.Length];
        new PlantMotion(parts).Equations.Rates(0.0, state, rates);
        Assert.All(rates, rate => Assert.True(double.IsFinite(rate)));
    }
}
