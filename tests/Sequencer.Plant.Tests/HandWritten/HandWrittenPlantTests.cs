using Sequencer.Plant.Description;
using Sequencer.Testing;
using Sequencer.Testing.HandWrittenPlant;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.HandWritten;

/// <summary>The motion of a demo plant beside the same equations written by hand in C.</summary>
public sealed class HandWrittenPlantTests
{
    private const int ScansInMinute = 600;
    private const int HeatOfChamber = 56;

    private static PlantModel Fernhollow()
    {
        DiagnosticBag diagnostics = new();
        string path = RepositoryPath.At("sequences", "fernhollow", "plant.yaml");
        return PlantReader.Read(new SourceText("plant.yaml", File.ReadAllText(path)), diagnostics)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
    }

    [Fact]
    public void The_same_equations_and_steps_in_C_give_the_same_numbers()
    {
        PlantModel model = Fernhollow();
        MotionScript script = MotionScript.Fernhollow(4.0);
        (IReadOnlyList<double[]> ours, long steps, long equilibria) = SimulatedMotion.Play(model, script, ScansInMinute);
        using HandWrittenProgram program = HandWrittenProgram.Steps();
        (IReadOnlyList<double[]> theirs, string last) = program.Play(model, script, $"{ScansInMinute}");
        Assert.StartsWith($"steps {steps} equilibria {equilibria} ", last, StringComparison.Ordinal);
        Assert.Equal(240, ours.Count);
        AssertAlike(theirs, ours, ours[0].Length, _ => 1e-9);
    }

    /// <summary>
    /// CVODE's backward differentiation to 1e-11; our steps may err by 1e-6 each, root mean square, and by 0.01 L C of heat: much in a chamber
    /// of 20 L through which a litre runs each second.
    /// </summary>
    [Fact]
    public void An_outside_solver_of_the_same_equations_gives_nearly_the_same_numbers()
    {
        PlantModel model = Fernhollow();
        MotionScript script = MotionScript.Fernhollow(2.0);
        (IReadOnlyList<double[]> ours, _, _) = SimulatedMotion.Play(model, script, ScansInMinute);
        using HandWrittenProgram reference = HandWrittenProgram.Reference();
        (IReadOnlyList<double[]> theirs, _) = reference.Play(model, script, "60");
        AssertAlike(theirs, ours, theirs[0].Length, value => value == HeatOfChamber ? 5e-4 : 1e-5);
    }

    /// <summary>Within a share of each value's largest over the run, or of 1; the time comes first, then the state, then the pH.</summary>
    private static void AssertAlike(IReadOnlyList<double[]> expected, IReadOnlyList<double[]> actual, int count, Func<int, double> shareOf)
    {
        Assert.Equal(expected.Count, actual.Count);
        double[] scale = [.. Enumerable.Range(0, count).Select(value => Math.Max(1.0, expected.Max(state => Math.Abs(state[value]))))];
        for (int state = 0; state < expected.Count; state++)
        {
            for (int value = 0; value < count; value++)
            {
                double apart = Math.Abs(actual[state][value] - expected[state][value]) / scale[value];
                Assert.True(apart <= shareOf(value), $"value {value} after {expected[state][0]} s: {actual[state][value]:R} where {expected[state][value]:R} is expected, {apart:E1} apart");
            }
        }
    }
}
