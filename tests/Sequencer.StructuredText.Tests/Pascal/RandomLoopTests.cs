using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Text;

namespace Sequencer.StructuredText.Tests.Pascal;

/// <summary>Random blocks with loops, jumps and arrays: what our reader makes of them beside what the Free Pascal compiler does, many in one program.</summary>
public sealed class RandomLoopTests
{
    private const int Blocks = 40;
    private const int Scans = 400;
    private const int FirstSeed = 3310;

    [Fact]
    public void Random_loops_and_jumps_do_what_the_compiled_ones_do()
    {
        ImmutableArray<Piece>[] bodies = [.. Enumerable.Range(FirstSeed, Blocks).Select(RandomLoops.Make)];
        Assert.Contains(bodies, body => Piece.Text(body).Contains("CONTINUE", StringComparison.Ordinal));
        Assert.Contains(bodies, body => Piece.Text(body).Contains("RETURN", StringComparison.Ordinal));
        string? difference = Difference(bodies, bodies);
        Assert.True(difference is null, difference is null ? null : Smallest(bodies));
    }

    [Fact]
    public void A_body_that_is_not_the_same_is_found_and_made_small()
    {
        ImmutableArray<Piece>[] bodies = [.. Enumerable.Range(FirstSeed, 3).Select(RandomLoops.Make)];
        ImmutableArray<Piece>[] others = [bodies[0], bodies[1].Add(Piece.Leaf("A := LIMIT(0, A + 1, 20);")), bodies[2]];
        Assert.NotNull(Difference(bodies, others));
    }

    /// <summary>Names the first body that differs by itself, made as small as it still does.</summary>
    private static string Smallest(ImmutableArray<Piece>[] bodies)
    {
        ImmutableArray<Piece> failing = bodies.First(body => Difference([body], [body]) is not null);
        while (Piece.Smaller(failing).Select(body => (ImmutableArray<Piece>?)body).FirstOrDefault(body => IsReadAndDiffers(body!.Value)) is { } smaller)
        {
            failing = smaller;
        }

        return $"{Difference([failing], [failing])}\n{Piece.Text(failing)}";
    }

    private static bool IsReadAndDiffers(ImmutableArray<Piece> body) =>
        StructuredTextReader.Read(new SourceText("smaller.st", Program([body])), new ReadingOptions("ALL", 100)).System is not null
        && Difference([body], [body]) is not null;

    private static string? Difference(ImmutableArray<Piece>[] bodies, ImmutableArray<Piece>[] forPascal) =>
        JudgedText.Difference(Program(bodies), Program(forPascal), "ALL", Scans, allowed: "SEQ0743");

    /// <summary>The bodies as blocks, and one block that calls them all. Each begins with its outputs assigned, so that none counts as never assigned.</summary>
    private static string Program(ImmutableArray<Piece>[] bodies)
    {
        StringBuilder text = new();
        StringBuilder calls = new();
        StringBuilder outputs = new();
        StringBuilder instances = new();
        for (int index = 0; index < bodies.Length; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"FUNCTION_BLOCK B{index}\n{RandomLoops.Declarations}A := A; B := B; C := C;\n{Piece.Text(bodies[index])}END_FUNCTION_BLOCK\n");
            outputs.Append(CultureInfo.InvariantCulture, $" A{index}, B{index}, C{index} : INT (0..20);\n");
            instances.Append(CultureInfo.InvariantCulture, $" U{index} : B{index};\n");
            calls.Append(CultureInfo.InvariantCulture, $"U{index}(X := X, Y := Y, A => A{index}, B => B{index}, C => C{index});\n");
        }

        return $"{text}FUNCTION_BLOCK ALL\nVAR_INPUT X, Y : INT (0..20); END_VAR\nVAR_OUTPUT\n{outputs}END_VAR\nVAR\n{instances}END_VAR\n{calls}END_FUNCTION_BLOCK\n";
    }
}
