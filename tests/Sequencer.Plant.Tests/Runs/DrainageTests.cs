using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Worked examples of tanks that drain through a hole in the floor, by Torricelli's law, in a run.</summary>
public sealed class DrainageTests
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;

    private static RunningPlant Draining(double diameter, double bore, double coefficient, double level)
    {
        double area = Math.PI / 4.0 * diameter * diameter;
        RunningPlant tank = RunningPlant.Start(RunningPlant.Model(FormattableString.Invariant($$$"""
            plant: 1
            name: Draining tank
            ambient: 20 C
            supplies:
              water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 1 mmol/L}}
            tanks:
              TK1: {area: {{{area:F6}}} m2, overflow: {{{area * 10.0:F6}}} m3, heel: 0.01 L, starts: {volume: {{{area * level:F6}}} m3, water: water}, mixing: {dead_time: 0 s, lag: 1 s}}
            valves: {XV1: {travel: 50 ms}}
            lines:
              drain: {from: TK1, to: sewer, outlet: {bore: {{{bore * 1e3:F4}}} mm, coefficient: {{{coefficient}}}}, through: [XV1]}
            """)));
        tank.Command(true, "XV1");
        return tank;
    }

    /// <summary>Seconds from the start until the level is there; to the heel, a hundredth of a litre, where that is 0.</summary>
    private static double Seconds(RunningPlant tank, double level, double scan)
    {
        double seconds = 0.0;
        double area = tank.Quantity("TK1.volume") / tank.Quantity("TK1.level");
        while (tank.Quantity("TK1.level") > level + (1.0001e-5 / area))
        {
            tank.Plant.Advance(scan);
            Assert.Null(tank.Plant.Failure);
            seconds += scan;
        }

        return seconds;
    }

    /// <summary>Tank of 4 ft, hole of 5 square inches, 6 ft to 2 ft. Source: set problem, which states 94 and 93.9 s; 93.4 s by its own formula.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_tank_drains_between_two_levels_in_the_time_of_the_worked_example() =>
        Within(93.9, Seconds(Draining(4.0 * Foot, Math.Sqrt(5.0 * 4.0 / Math.PI) * Inch, 1.0, 6.0 * Foot), 2.0 * Foot, 0.1), 0.94);

    /// <summary>t = (r/a)^2 sqrt(2h/g) with r 2.5, a 0.01, h 2 m: 39 909 s. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_wide_tank_empties_in_the_ideal_time() => Within(39_909.0, Seconds(Draining(5.0, 0.02, 1.0, 2.0), 0.0, 10.0), 50.0);

    /// <summary>Diameter 2 m, sharp orifice of 50 mm (coefficient 0.6), 2 m: 1703 s, half the level after 29.3 % of it. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_sharp_orifice_takes_longer_and_the_second_half_most_of_it()
    {
        double whole = Seconds(Draining(2.0, 0.05, 0.6, 2.0), 0.0, 0.5);
        Within(1703.0, whole, 3.4);
        Within(0.293, Seconds(Draining(2.0, 0.05, 0.6, 2.0), 1.0, 0.5) / whole, 0.001);
    }

    /// <summary>Volume over the first flow is half the true time, whatever the tank. Source: engineering reference page (secondary).</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void At_its_first_rate_it_would_empty_in_half_the_time()
    {
        RunningPlant tank = Draining(2.0, 0.05, 0.6, 2.0);
        tank.Run(0.1);
        double atFirstRate = tank.Quantity("TK1.volume") * 1e3 / (tank.Quantity("drain.flow") / 60.0);
        Within(0.5, atFirstRate / Seconds(tank, 0.0, 0.5), 0.001);
    }
}
