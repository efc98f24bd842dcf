using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing.Pascal;
using Sequencer.Text;

namespace Sequencer.StructuredText.Tests.Pascal;

/// <summary>A text as our reader takes it beside the same text as the Free Pascal compiler takes it, on random inputs.</summary>
internal static class JudgedText
{
    private const string Power = "power.returned";
    private const int ScanMilliseconds = 100;
    private const int PercentChange = 20;
    private const int PercentPower = 1;

    /// <summary>The first difference of an output in words, or null.</summary>
    /// <param name="text">What we read.</param>
    /// <param name="forPascal">What is rewritten to Pascal; the same, but in tests of the judge itself.</param>
    /// <param name="block">The block that runs.</param>
    /// <param name="scans">How many scans are run.</param>
    /// <param name="allowed">Warnings that random text cannot help.</param>
    public static string? Difference(string text, string forPascal, string block, int scans, string? allowed = null)
    {
        ReadingResult read = StructuredTextReader.Read(new SourceText("rules.st", text), new ReadingOptions(block, ScanMilliseconds));
        Assert.True(read.Diagnostics.All(one => one.Code == allowed), DiagnosticRenderer.Render(read.Diagnostics));
        TransitionSystem system = read.System!;
        PascalProgram program = PascalRewriter.Rewrite(forPascal);
        Variable[] inputs = [.. system.Inputs.Where(input => input.Name != Power)];
        Assert.Equal(program.Blocks[block].Count(variable => variable.IsInput), inputs.Length);
        OutputVariable[] outputs = [.. system.Outputs.OrderBy(output => output.Value.Sort == Sort.Boolean)];
        using PascalLockstep pascal = new(new LockstepProgram(
            program, block, ScanMilliseconds, 0, [.. inputs.Select(input => Value(input.Name, input.Sort))], [.. outputs.Select(output => Value(output.Name, output.Value.Sort))]));
        Play(system, [.. inputs.Select(input => input.Index)], [.. outputs.Select(output => system.Outputs.IndexOf(output))], pascal, scans);
        pascal.Finish();
        return pascal.Difference;
    }

    private static PascalValue Value(string name, Sort sort) => new(name, $"v_{name}", sort == Sort.Boolean);

    private static void Play(TransitionSystem system, int[] inputs, int[] outputs, PascalLockstep pascal, int scans)
    {
        Random random = new(61131);
        Interpreter interpreter = new(system);
        int power = system.Inputs.Single(input => input.Name == Power).Index;
        ImmutableArray<Variable> variables = system.Inputs;
        foreach (int input in inputs)
        {
            interpreter.Inputs[input] = Math.Clamp(0, variables[input].Range.Minimum, variables[input].Range.Maximum);
        }

        for (int scan = 0; scan < scans; scan++)
        {
            foreach (int input in inputs.Where(_ => random.Next(100) < PercentChange))
            {
                interpreter.Inputs[input] = random.NextInt64(variables[input].Range.Minimum, variables[input].Range.Maximum + 1);
            }

            interpreter.Inputs[power] = random.Next(100) < PercentPower ? 1 : 0;
            interpreter.Step();
            pascal.Scan(interpreter.Inputs[power] == 1, [.. inputs.Select(input => interpreter.Inputs[input])], [.. outputs.Select(output => interpreter.Outputs[output])]);
        }
    }
}
