using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>A line of a demo program that says something: what it is, and the names that may stand in it.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Statement">The word that it begins with.</param>
/// <param name="Step">The number of the step that it stands in; null outside the procedure.</param>
internal sealed partial record ProgramLine(
    int Number, string Text, string Statement, string? Step, ImmutableArray<string> Steps, ImmutableArray<string> Motors, ImmutableArray<string> Valves)
{
    /// <summary>What the variant is named after.</summary>
    public string Subject
    {
        get
        {
            string[] words = Text.Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
            bool named = Statement is not ("go" or "limit" or "join" or "start" or "after" or "expect");
            string own = named && words.Length > 1 ? $"{words[0]} {words[1]}" : words[0];
            return Step is null ? own : $"step {Step}, {own}";
        }
    }

    /// <summary>The lines of a program that the operators work on: neither comments nor what the program is judged by.</summary>
    public static IEnumerable<ProgramLine> Of(string program)
    {
        ImmutableArray<string> steps = [.. StepHead().Matches(program).Select(match => match.Groups[1].Value)];
        ImmutableArray<string> motors = [.. MotorHead().Matches(program).Select(match => match.Groups[1].Value)];
        ImmutableArray<string> valves = [.. ValveHead().Matches(program).Select(match => match.Groups[1].Value)];
        string? step = null;
        string[] lines = program.Split('\n');
        for (int index = 0; index < lines.Length; index++)
        {
            string trimmed = lines[index].Trim();
            string statement = trimmed.Split(' ')[0];
            step = StepHead().Match(lines[index]) is { Success: true } head ? head.Groups[1].Value : statement == "join" ? null : step;
            if (trimmed.Length > 0 && !trimmed.StartsWith("--", StringComparison.Ordinal) && !Yardsticks.Contains(statement))
            {
                yield return new ProgramLine(index + 1, lines[index], statement, step, steps, motors, valves);
            }
        }
    }

    /// <summary>
    /// A program is judged by its requirements under its assumptions; a broken one of these is another question.
    /// The others change nothing that a program does.
    /// </summary>
    private static readonly string[] Yardsticks = ["language", "unit", "require", "assume", "procedure", "step", "expect", "reagent", "parameter"];

    [GeneratedRegex(@"^  step (\d+)", RegexOptions.Multiline)]
    private static partial Regex StepHead();

    [GeneratedRegex(@"^output (\w+) +motor", RegexOptions.Multiline)]
    private static partial Regex MotorHead();

    [GeneratedRegex(@"^output (\w+) +valve", RegexOptions.Multiline)]
    private static partial Regex ValveHead();
}
