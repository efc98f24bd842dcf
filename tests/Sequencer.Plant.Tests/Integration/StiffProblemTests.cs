using System.Globalization;
using Sequencer.Plant.Integration;
using Sequencer.Testing;
using Sequencer.Testing.HandWrittenPlant;

namespace Sequencer.Plant.Tests.Integration;

/// <summary>Stiff problems of the books by our integrators and by CVODE of SUNDIALS.</summary>
public sealed class StiffProblemTests : IClassFixture<StiffProblemTests.Outside>
{
    private readonly CProgram _outside;

    public StiffProblemTests(Outside outside) => _outside = outside.Program;

    /// <summary>Errors pile up over thousands of steps, and where a solution leaps a little of time is much of value: some ten to a thousand times the tolerance.</summary>
    [Theory]
    [InlineData("robertson", "1e-14", 1e-10, 1e-5, "0.4 40 4000 400000")]
    [InlineData("van-der-pol", "1e-12", 1e-7, 1e-5, "0.5 1 1.5 2")]
    [InlineData("oregonator", "1e-9", 1e-7, 1e-4, "30 90 180 270 360")]
    [InlineData("hires", "1e-14", 1e-10, 1e-5, "5 50 321.8122")]
    public void Both_come_to_the_same(string name, string outsideAbsolute, double absolute, double share, string times)
    {
        (Rates rates, double[] start) = StiffProblem.Of(name);
        double[][] expected = [.. _outside.Run([name, outsideAbsolute, .. times.Split(' ')], string.Empty).Select(PrintedNumbers.Read)];
        double[] allowed = new double[start.Length];
        Array.Fill(allowed, absolute);
        SwitchingIntegrator solver = new(rates, allowed, 1e-7, 1e-6, double.PositiveInfinity);
        solver.Restart(0.0, start);
        int at = 0;
        foreach (double time in times.Split(' ').Select(time => double.Parse(time, CultureInfo.InvariantCulture)))
        {
            while (solver.End < time)
            {
                Assert.Equal(StepOutcome.Accepted, solver.Step(time));
            }

            for (int component = 0; component < start.Length; component++)
            {
                double apart = Math.Abs(solver.State[component] - expected[at][component]);
                double near = (share * Math.Abs(expected[at][component])) + (100.0 * absolute);
                Assert.True(apart <= near, $"{name}, component {component} at {time}: {solver.State[component]:R}, CVODE has {expected[at][component]:R}");
            }

            at++;
        }

        Assert.True(solver.AcceptedImplicit > 0);
        Assert.InRange(solver.Accepted, 1, 20_000);
    }

    /// <summary>HIRES at its end, as the test set for initial value problem solvers of Bari and CWI prints it (from memory).</summary>
    [Fact]
    public void The_outside_solver_comes_to_the_printed_end()
    {
        double[] end = PrintedNumbers.Read(_outside.Run(["hires", "1e-14", "321.8122"], string.Empty)[0]);
        Assert.Equal(0.7371312573325668e-3, end[0], 1e-10);
        Assert.Equal(0.0057, end[6] + end[7], 1e-10);
    }

    public sealed class Outside : IDisposable
    {
        public CProgram Program { get; } =
            new([RepositoryPath.At("tests", "Sequencer.Plant.Tests", "Integration", "stiff.c")], Sundials.Libraries());

        public void Dispose() => Program.Dispose();
    }
}
