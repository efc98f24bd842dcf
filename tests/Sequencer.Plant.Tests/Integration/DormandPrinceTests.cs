using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Tests.Integration;

public sealed class DormandPrinceTests
{
    private static DormandPrince Solver(Rates rates, double[] initial, double tolerance)
    {
        double[] absolute = new double[initial.Length];
        Array.Fill(absolute, tolerance);
        DormandPrince solver = new(rates, absolute, tolerance, 1e-3);
        solver.Restart(0.0, initial);
        return solver;
    }

    private static void Circle(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        rates[0] = state[1];
        rates[1] = -state[0];
    }

    [Fact]
    public void A_circle_comes_back_after_one_turn()
    {
        DormandPrince solver = Solver(Circle, [0.0, 1.0], 1e-10);
        while (solver.End < 2.0 * Math.PI)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(2.0 * Math.PI));
        }

        Assert.Equal(2.0 * Math.PI, solver.End);
        Assert.Equal(0.0, solver.State[0], 1e-8);
        Assert.Equal(1.0, solver.State[1], 1e-8);
    }

    [Fact]
    public void Within_a_step_the_continuous_extension_is_as_good_as_the_step()
    {
        DormandPrince solver = Solver(Circle, [0.0, 1.0], 1e-9);
        double[] state = new double[2];
        while (solver.End < 10.0)
        {
            solver.Step(10.0);
            for (int part = 0; part <= 10; part++)
            {
                double time = solver.Start + ((solver.End - solver.Start) * part / 10.0);
                solver.Interpolate(time, state);
                Assert.Equal(Math.Sin(time), state[0], 1e-6);
                Assert.Equal(state[1], solver.Interpolate(time, 1));
            }
        }
    }

    /// <summary>y' = -L (y - cos t) - sin t with y(0) = 1 has the solution cos t for every L (Prothero and Robinson, Math. Comp. 28 (1974) 145).</summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(100.0)]
    [InlineData(10_000.0)]
    public void A_stiff_problem_costs_steps_but_no_accuracy(double stiffness)
    {
        DormandPrince solver = Solver(
            (time, state, rates) => rates[0] = (-stiffness * (state[0] - Math.Cos(time))) - Math.Sin(time), [1.0], 1e-7);
        while (solver.End < 2.0)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(2.0));
        }

        Assert.Equal(Math.Cos(2.0), solver.State[0], 1e-6);
        Assert.True(stiffness < 10_000.0 || solver.Accepted > 1000, "an explicit method cannot take long steps here");
    }

    [Fact]
    public void What_the_equations_keep_every_value_keeps()
    {
        DormandPrince solver = Solver(
            (_, state, rates) =>
            {
                double first = 3.0 * state[0];
                double second = 0.7 * state[1] * state[1];
                rates[0] = -first;
                rates[1] = first - second;
                rates[2] = second;
            },
            [1.0, 0.0, 0.0],
            1e-4);
        double[] state = new double[3];
        for (int step = 0; step < 20; step++)
        {
            solver.Step(100.0);
            solver.Interpolate(0.3 * solver.Start + (0.7 * solver.End), state);
            Assert.Equal(1.0, state.Sum(), 1e-14);
        }
    }

    [Fact]
    public void A_step_that_is_cut_goes_on_from_where_it_was_cut()
    {
        DormandPrince solver = Solver(Circle, [0.0, 1.0], 1e-9);
        solver.Step(0.5);
        double cut = 0.4 * solver.End;
        solver.Truncate(cut);
        Assert.Equal(cut, solver.End);
        Assert.Equal(Math.Sin(cut), solver.State[0], 1e-8);
        Assert.Equal(Math.Sin(cut / 2.0), solver.Interpolate(cut / 2.0, 0), 1e-8);
        solver.Step(0.5);
        Assert.Equal(cut, solver.Start);
        Assert.Equal(Math.Sin(solver.End), solver.State[0], 1e-8);
    }

    [Fact]
    public void Equations_that_give_no_number_are_given_up()
    {
        DormandPrince solver = Solver((_, _, rates) => rates[0] = double.NaN, [1.0], 1e-6);
        Assert.Equal(StepOutcome.TooSmall, solver.Step(1.0));
        Assert.Equal(0.0, solver.End);
        Assert.Equal(1.0, solver.State[0]);
    }

    [Fact]
    public void A_falling_body_meets_the_ground_when_it_must()
    {
        const double Height = 20.0;
        DormandPrince solver = Solver(
            (_, state, rates) =>
            {
                rates[0] = state[1];
                rates[1] = -9.80665;
            },
            [Height, 0.0],
            1e-9);
        while (solver.State[0] > 0.0)
        {
            solver.Step(10.0);
        }

        double met = RootLocation.Find(time => -solver.Interpolate(time, 0), solver.Start, solver.End, 1e-10);
        Assert.Equal(Math.Sqrt(2.0 * Height / 9.80665), met, 1e-8);
    }

    [Theory]
    [InlineData(0.0001)]
    [InlineData(0.5)]
    [InlineData(0.9999)]
    public void A_crossing_is_found_no_earlier_than_it_is(double where)
    {
        double found = RootLocation.Find(time => Math.Pow(time, 9) - Math.Pow(where, 9), 0.0, 1.0, 1e-12);
        Assert.InRange(found - where, 0.0, 1e-9);
    }
}
