using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Tests.Integration;

public sealed class DiagonallyImplicitTests
{
    private static DiagonallyImplicit Solver(Rates rates, double[] initial, double tolerance)
    {
        double[] absolute = new double[initial.Length];
        Array.Fill(absolute, tolerance);
        DiagonallyImplicit solver = new(rates, absolute, tolerance, 1e-3);
        solver.Restart(0.0, initial);
        return solver;
    }

    private static void Circle(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        rates[0] = state[1];
        rates[1] = -state[0];
    }

    /// <summary>The eight conditions of order 4, and the four of order 3 for what the error is measured against (Hairer, Norsett and Wanner I, section II.2).</summary>
    [Fact]
    public void The_coefficients_meet_the_conditions_of_their_orders()
    {
        const int Stages = DiagonallyImplicitTableau.Stages;
        double[][] weights =
        [
            .. Enumerable.Range(0, Stages).Select(stage => (double[])
            [
                .. DiagonallyImplicitTableau.Stage(stage), DiagonallyImplicitTableau.Diagonal, .. new double[Stages - stage - 1],
            ]),
        ];
        double[] nodes = [.. DiagonallyImplicitTableau.Nodes];
        double[] own = weights[^1];
        double[] lower = [.. own.Select((weight, stage) => weight - DiagonallyImplicitTableau.ErrorWeights[stage])];
        double[] ones = [1.0, 1.0, 1.0, 1.0, 1.0];
        double[] squares = [.. nodes.Select(node => node * node)];
        double[] sums = [.. weights.Select(row => Dot(row, nodes))];
        Assert.All(Enumerable.Range(0, Stages), stage => Assert.Equal(nodes[stage], weights[stage].Sum(), 1e-14));
        Assert.All((double[][])[own, lower], row =>
        {
            Assert.Equal(1.0, Dot(row, ones), 1e-14);
            Assert.Equal(1.0 / 2.0, Dot(row, nodes), 1e-14);
            Assert.Equal(1.0 / 3.0, Dot(row, squares), 1e-14);
            Assert.Equal(1.0 / 6.0, Dot(row, sums), 1e-14);
        });
        Assert.Equal(1.0 / 4.0, Dot(own, [.. nodes.Select(node => node * node * node)]), 1e-14);
        Assert.Equal(1.0 / 8.0, Dot(own, [.. nodes.Zip(sums, (node, sum) => node * sum)]), 1e-14);
        Assert.Equal(1.0 / 12.0, Dot(own, [.. weights.Select(row => Dot(row, squares))]), 1e-14);
        Assert.Equal(1.0 / 24.0, Dot(own, [.. weights.Select(row => Dot(row, sums))]), 1e-14);
        for (double share = 0.125; share <= 1.0; share += 0.125)
        {
            double[] within = [.. Enumerable.Range(0, Stages).Select(stage => Power(DiagonallyImplicitTableau.DenseWeights(stage), share))];
            Assert.Equal(share, within.Sum(), 1e-13);
            Assert.Equal(share * share / 2.0, Dot(within, nodes), 1e-13);
            Assert.Equal(share * share * share / 3.0, Dot(within, squares), 1e-13);
            Assert.Equal(share * share * share / 6.0, Dot(within, sums), 1e-13);
        }

        static double Dot(double[] left, double[] right) => left.Zip(right, (one, other) => one * other).Sum();

        static double Power(ReadOnlySpan<double> factors, double share)
        {
            double sum = 0.0;
            for (int power = factors.Length - 1; power >= 0; power--)
            {
                sum = share * (factors[power] + sum);
            }

            return sum;
        }
    }

    [Fact]
    public void A_circle_comes_back_after_one_turn()
    {
        DiagonallyImplicit solver = Solver(Circle, [0.0, 1.0], 1e-10);
        while (solver.End < 2.0 * Math.PI)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(2.0 * Math.PI));
        }

        Assert.Equal(2.0 * Math.PI, solver.End);
        Assert.Equal(0.0, solver.State[0], 1e-7);
        Assert.Equal(1.0, solver.State[1], 1e-7);
    }

    [Fact]
    public void Within_a_step_the_continuous_extension_is_about_as_good_as_the_step()
    {
        DiagonallyImplicit solver = Solver(Circle, [0.0, 1.0], 1e-9);
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

    /// <summary>y' = -L (y - cos t) - sin t with y(0) = 1 has the solution cos t for every L (Prothero and Robinson, Math. Comp. 28 (1974) 145). Stability would hold an explicit method to 3e-4 s at 1e4.</summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(1e4)]
    [InlineData(1e8)]
    public void Stiffness_costs_few_steps_and_no_accuracy(double stiffness)
    {
        DiagonallyImplicit solver = Solver(
            (time, state, rates) => rates[0] = (-stiffness * (state[0] - Math.Cos(time))) - Math.Sin(time), [1.0], 1e-7);
        while (solver.End < 2.0)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(2.0));
        }

        Assert.Equal(Math.Cos(2.0), solver.State[0], 1e-6);
        Assert.InRange(solver.Accepted, 1, 1000);
    }

    /// <summary>The balances of a plant are kept to rounding, also where derivatives from differences are rough.</summary>
    [Fact]
    public void What_the_equations_keep_every_value_keeps()
    {
        DiagonallyImplicit solver = Solver(
            (_, state, rates) =>
            {
                double first = 3000.0 * state[0];
                double second = 7000.0 * state[1] * state[1];
                rates[0] = -first;
                rates[1] = first - second;
                rates[2] = second;
            },
            [1.0, 0.0, 0.0],
            1e-4);
        double[] state = new double[3];
        for (int step = 0; step < 40; step++)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(100.0));
            solver.Interpolate((0.3 * solver.Start) + (0.7 * solver.End), state);
            Assert.Equal(1.0, state.Sum(), 1e-11);
        }
    }

    [Fact]
    public void A_step_that_is_cut_goes_on_from_where_it_was_cut()
    {
        DiagonallyImplicit solver = Solver(Circle, [0.0, 1.0], 1e-9);
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
        DiagonallyImplicit solver = Solver((_, _, rates) => rates[0] = double.NaN, [1.0], 1e-6);
        Assert.Equal(StepOutcome.TooSmall, solver.Step(1.0));
        Assert.Equal(0.0, solver.End);
        Assert.Equal(1.0, solver.State[0]);
    }
}
