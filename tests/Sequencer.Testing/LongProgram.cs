using System.Text;

namespace Sequencer.Testing;

/// <summary>A valid program as long as asked for: the declarations of a short one, then step after step.</summary>
public static class LongProgram
{
    private const int LinesOfStep = 5;

    /// <param name="program">A program with the outputs XV1 and AG1 and the volume LT1; its procedure is replaced.</param>
    /// <param name="lines">The lines that the result has at least, and at most five more.</param>
    public static string Of(string program, int lines)
    {
        StringBuilder text = new(program[..program.IndexOf("procedure", StringComparison.Ordinal)]);
        int before = text.ToString().Count(character => character == '\n') + 1;
        int steps = (lines - before + LinesOfStep - 1) / LinesOfStep;
        text.Append("procedure\n");
        for (int step = 1; step <= steps; step++)
        {
            bool fills = step % 2 == 1;
            string next = step == steps ? "finish" : FormattableString.Invariant($"{step + 1}");
            text.Append(FormattableString.Invariant($"\n  step {step} \"Part {step}\"\n"));
            text.Append(fills ? "    open XV1\n" : "    run AG1\n");
            text.Append(FormattableString.Invariant($"    limit 60 min then hold \"Slow in part {step}\"\n"));
            text.Append(FormattableString.Invariant($"    go {next} when {(fills ? "LT1 >= 0.600 m3" : "LT1 < 0.300 m3")}\n"));
        }

        return text.ToString();
    }
}
