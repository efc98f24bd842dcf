using Sequencer.Plant.Integration;

namespace Sequencer.Plant.Tests.Integration;

/// <summary>A state brought from one time of a step to another is what it would be brought there anew, whatever rests in it.</summary>
public sealed class ReinterpolationTests
{
    private const int Components = 11;

    /// <summary>Components from 4 to 7 rest until time 2; the last three, too few for a vector, decay.</summary>
    private static void Rates(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        for (int index = 0; index < Components; index++)
        {
            rates[index] = index is >= 4 and < 8 ? (time < 2.0 ? 0.0 : 1.0 + index) : (-0.3 - (0.1 * index)) * state[index];
        }
    }

    private static SwitchingIntegrator Solver()
    {
        double[] absolute = new double[Components];
        Array.Fill(absolute, 1e-9);
        SwitchingIntegrator solver = new(Rates, absolute, 1e-9, 0.1, 1e-3);
        solver.Restart(0.0, [.. Enumerable.Range(1, Components).Select(index => (double)index)]);
        return solver;
    }

    [Fact]
    public void A_state_moved_within_a_step_is_that_of_its_time()
    {
        SwitchingIntegrator solver = Solver();
        double[] moved = new double[Components];
        double[] anew = new double[Components];
        long version = -1;
        int kept = 0;
        double time = 0.0;
        for (int step = 1; time < 4.0; step++)
        {
            Assert.Equal(StepOutcome.Accepted, solver.Step(time < 2.0 ? 2.0 : 4.0));
            if (step % 5 == 0)
            {
                solver.TakeBack();
                Check(solver.End);
                solver.Step(solver.End + 0.01);
            }

            Check(solver.Start);
            Check(solver.Start + (0.3 * (solver.End - solver.Start)));
            Check(solver.End);
            if (step % 7 == 0)
            {
                solver.Truncate(solver.Start + (0.6 * (solver.End - solver.Start)));
                Check(solver.End);
            }

            if (step % 11 == 0)
            {
                solver.Restart(solver.End, solver.State);
                Check(solver.End);
            }

            time = solver.End;
        }

        Assert.True(kept > 50, $"only {kept} were moved");

        void Check(double at)
        {
            if (version == solver.Version)
            {
                solver.Reinterpolate(at, moved);
                kept++;
            }
            else
            {
                solver.Interpolate(at, moved);
                version = solver.Version;
            }

            solver.Interpolate(at, anew);
            Assert.Equal(anew, moved);
            Assert.Equal(solver.Interpolate(at, 5), moved[5]);
        }
    }
}
