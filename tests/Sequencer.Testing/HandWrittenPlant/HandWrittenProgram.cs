using Sequencer.Plant.Description;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>The hand-written plant in C: by itself, or with its equations integrated by SUNDIALS.</summary>
public sealed class HandWrittenProgram : IDisposable
{
    private readonly CProgram _program;

    private HandWrittenProgram(string main, params string[] libraries)
    {
        string[] files = [main, "description.c", "motion.c", "drum.c", "settling.c", "chemistry.c"];
        _program = new CProgram(files.Select(file => RepositoryPath.At("tests", "Sequencer.Testing", "HandWrittenPlant", file)), libraries);
    }

    /// <summary>Our own steps, written by hand.</summary>
    public static HandWrittenProgram Steps() => new("steps.c");

    /// <summary>The same equations, integrated by CVODE.</summary>
    public static HandWrittenProgram Reference() => new("reference.c", Sundials.Libraries());

    /// <summary>The states that it prints, each with its time first, and its last line.</summary>
    /// <param name="model">The plant.</param>
    /// <param name="script">What its drives are told.</param>
    /// <param name="every">How many scans, or seconds of the reference, from one state to the next.</param>
    public (IReadOnlyList<double[]> States, string Last) Play(PlantModel model, MotionScript script, string every)
    {
        string[] lines = _program.Run([every], PlantNumbers.Write(model, script));
        return ([.. lines.Where(line => line.StartsWith("state ", StringComparison.Ordinal)).Select(line => PrintedNumbers.Read(line["state ".Length..]))], lines[^1]);
    }

    public void Dispose() => _program.Dispose();
}
