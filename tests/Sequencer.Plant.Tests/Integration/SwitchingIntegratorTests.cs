using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Tests.Integration;

public sealed class SwitchingIntegratorTests
{
    private static SwitchingIntegrator Solver(Rates rates, double[] initial, double shortStep)
    {
        double[] absolute = new double[initial.Length];
        Array.Fill(absolute, 1e-7);
        SwitchingIntegrator solver = new(rates, absolute, 1e-7, 1e-3, shortStep);
        solver.Restart(0.0, initial);
        return solver;
    }

    private static Rates ProtheroRobinson(double stiffness) =>
        (time, state, rates) => rates[0] = (-stiffness * (state[0] - Math.Cos(time))) - Math.Sin(time);

    /// <summary>The problem of Prothero and Robinson, Math. Comp. 28 (1974) 145; its solution is cos t.</summary>
    [Theory]
    [InlineData(1.0, 0.1, false)]
    [InlineData(1e5, 0.1, true)]
    [InlineData(1e5, 1e-6, false)]
    public void The_implicit_method_is_taken_where_stability_alone_holds_steps_short(double stiffness, double shortStep, bool isTaken)
    {
        SwitchingIntegrator solver = Solver(ProtheroRobinson(stiffness), [1.0], shortStep);
        while (solver.End < 1.0)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(1.0));
        }

        Assert.Equal(Math.Cos(1.0), solver.State[0], 1e-6);
        Assert.Equal(isTaken, solver.AcceptedImplicit > 0);
        Assert.True(!isTaken || solver.Accepted < 500, $"{solver.Accepted} steps");
    }

    [Fact]
    public void Where_the_equations_change_the_explicit_method_is_tried_again()
    {
        double stiffness = 1e5;
        SwitchingIntegrator solver = Solver((time, state, rates) => ProtheroRobinson(stiffness)(time, state, rates), [1.0], 0.1);
        while (solver.End < 1.0)
        {
            solver.Step(1.0);
        }

        long implicitly = solver.AcceptedImplicit;
        stiffness = 1.0;
        solver.Truncate(1.0);
        while (solver.End < 3.0)
        {
            solver.Step(3.0);
        }

        Assert.Equal(Math.Cos(3.0), solver.State[0], 1e-6);
        Assert.Equal(implicitly, solver.AcceptedImplicit);
    }

    /// <summary>At -5 1/s stability holds steps at some 0.65 s, far above the short step.</summary>
    [Theory]
    [InlineData(0.0)]
    [InlineData(1e-12)]
    public void A_step_that_was_cut_to_nothing_is_not_one_that_stability_holds_short(double left)
    {
        SwitchingIntegrator solver = Solver((_, state, rates) => rates[0] = -5.0 * (state[0] - 1.0), [2.0], 0.1);
        for (int step = 0; step < 60; step++)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(1e3));
        }

        solver.Truncate(solver.Start + left);
        Assert.Equal(StepOutcome.Accepted, solver.Step(1e3));
        Assert.True(solver.End - solver.Start > 0.1, $"{solver.End - solver.Start} s");
        Assert.Equal(0, solver.AcceptedImplicit);
    }
}
