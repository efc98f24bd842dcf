using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;
using Sequencer.Testing;
using Sequencer.Testing.HandWrittenPlant;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.HandWritten;

/// <summary>The motion of a demo plant beside the same equations written by hand in C.</summary>
public sealed class HandWrittenPlantTests
{
    private const int ScansInMinute = 600;
    private const int HeatOfChamber = 56;

    private static PlantModel Fernhollow() => Read("sequences", "fernhollow", "plant.yaml");

    private static PlantModel Beside(string name) => Read("tests", "Sequencer.Testing", "HandWrittenPlant", name);

    private static PlantModel Read(params string[] path)
    {
        DiagnosticBag diagnostics = new();
        return PlantReader.Read(new SourceText("plant.yaml", File.ReadAllText(RepositoryPath.At(path))), diagnostics)
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

    /// <summary>
    /// A drum filter, its equations written a second time by hand in C and integrated by CVODE to 1e-11: coat, cake, vacuum, filtrate, water in the pores, what the knife takes, and
    /// the tanks around it, from the coat's first powder to its fall. Vacuum, as its pump starts and stops, is 4e-4 apart, all but one of the others less than 1e-4.
    /// </summary>
    [Fact]
    public void An_outside_solver_of_the_drum_filter_gives_nearly_the_same_numbers()
    {
        PlantModel model = Beside("drum-filter.yaml");
        MotionScript script = MotionScript.Filtration();
        (IReadOnlyList<double[]> ours, _, _) = SimulatedMotion.Play(model, script, ScansInMinute);
        using HandWrittenProgram reference = HandWrittenProgram.Reference();
        (IReadOnlyList<double[]> theirs, _) = reference.Play(model, script, "60");
        AssertAlike(theirs, ours, theirs[0].Length, _ => 5e-4);
        PlantParts parts = new(model);
        double Most(int number) => theirs.Max(state => state[number + 1]);
        Assert.InRange(Most(parts.Layout.Held(0) + parts.Contents.FilterAid), 100e3, 125e3);
        Assert.InRange(Most(parts.Layout.Skimmed(0) + 1), 1e3, 10e3);
        Assert.InRange(theirs[^1][parts.Layout.Held(0) + parts.Contents.FilterAid + 1], 0.0, 10e3);
    }

    /// <summary>
    /// Flocs that form, settle, are drawn above and below, stirred up and washed over the rim, their equations written a second time by hand in C and integrated by CVODE to 1e-11. A step of ours may be off
    /// by a nanometre in the size of flocs, which begins at 2 um and grows e times in 20 s: while they grow it is 9e-4 of their largest apart, and what settles with its square 6e-4.
    /// </summary>
    [Fact]
    public void An_outside_solver_of_what_settles_gives_nearly_the_same_numbers()
    {
        PlantModel model = Beside("settling.yaml");
        MotionScript script = MotionScript.Settling();
        (IReadOnlyList<double[]> ours, _, _) = SimulatedMotion.Play(model, script, ScansInMinute);
        using HandWrittenProgram reference = HandWrittenProgram.Reference();
        (IReadOnlyList<double[]> theirs, _) = reference.Play(model, script, "60");
        PlantParts parts = new(model);
        StateLayout layout = parts.Layout;
        double Most(int number) => theirs.Max(state => state[number + 1]);
        double size = Most(layout.FlocSize(0));
        AssertAlike(theirs, ours, theirs[0].Length, value => value == layout.FlocSize(0) + 1 ? 1e-3 * size : 1e-3);
        Assert.InRange(size, 2e-4, 4e-4);
        Assert.InRange(Most(layout.Clear(0)), 1000.0, 2000.0);
        Assert.InRange(Most(layout.Flocs(0)), 4000.0, 6000.0);
        Assert.InRange(Most(layout.Bed(0) + parts.Contents.Suspended), 1000.0, 3000.0);
        Assert.InRange(Most(layout.Overflowed(0)), 200.0, 300.0);
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
