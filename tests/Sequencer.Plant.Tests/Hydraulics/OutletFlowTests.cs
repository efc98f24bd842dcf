using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Integration;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

/// <summary>Worked examples of tanks that drain through a hole in the floor, by Torricelli's law.</summary>
public sealed class OutletFlowTests
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;

    /// <summary>Seconds to fall from one level to another, by integration with event location.</summary>
    private static double DrainSeconds(double diameter, double bore, double coefficient, double from, double to)
    {
        double area = Math.PI / 4.0 * diameter * diameter;
        DormandPrince solver = new(
            (_, state, rates) => rates[0] = -OutletFlow.LitresPerSecond(state[0], bore, coefficient) / 1000.0 / area, [1e-10], 1e-8, 1.0);
        solver.Restart(0.0, [from]);
        double end = Math.Max(to, 1e-8);
        while (solver.State[0] > end)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(1e6));
        }

        return RootLocation.Find(time => end - solver.Interpolate(time, 0), solver.Start, solver.End, 1e-6);
    }

    /// <summary>Set problem: tank of 4 ft, hole of 5 square inches, 6 ft to 2 ft; stated 94 and 93.9 s.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void A_tank_drains_between_two_levels_in_the_time_of_the_worked_example()
    {
        double bore = Math.Sqrt(5.0 * 4.0 / Math.PI) * Inch;
        Within(93.4, DrainSeconds(4.0 * Foot, bore, 1.0, 6.0 * Foot, 2.0 * Foot), 0.93);
    }

    /// <summary>t = (r/a)^2 sqrt(2h/g) with r 2.5, a 0.01, h 2 m: 39 909 s.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_wide_tank_empties_in_the_ideal_time() => Within(39_909.0, DrainSeconds(5.0, 0.02, 1.0, 2.0, 0.0), 40.0);

    /// <summary>Diameter 2 m, sharp orifice of 50 mm (coefficient 0.6), 2 m: 1703 s, half the level after 29.3 % of it.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_sharp_orifice_takes_longer_and_the_second_half_most_of_it()
    {
        double whole = DrainSeconds(2.0, 0.05, 0.6, 2.0, 0.0);
        Within(1703.0, whole, 1.7);
        Within(0.293, DrainSeconds(2.0, 0.05, 0.6, 2.0, 1.0) / whole, 0.001);
    }

    /// <summary>Volume over the first flow is half the true time, whatever the tank.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void At_its_first_rate_it_would_empty_in_half_the_time()
    {
        double first = OutletFlow.LitresPerSecond(2.0, 0.05, 0.6) / 1000.0;
        Within(0.5, Math.PI * 2.0 / first / DrainSeconds(2.0, 0.05, 0.6, 2.0, 0.0), 0.0005);
    }
}
