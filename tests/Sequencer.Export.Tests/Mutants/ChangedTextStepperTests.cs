using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Tests.Equivalence;

namespace Sequencer.Export.Tests.Mutants;

/// <summary>The compiled stepper on text in which conditions can never hold any more, so that states have nothing to do.</summary>
public sealed partial class ChangedTextStepperTests
{
    private const int Scans = 2_000;

    [Theory]
    [InlineData("Step40_Dose_P303_Due := ", 1)]
    [InlineData("_Due := ", 4)]
    public void Runs_what_the_interpreter_runs(string changed, int lines)
    {
        DemoExport site = new("one-pit", "pit.seq");
        string[] text = [.. GoesOn().Replace(site.Export.Text, " ").Split('\n').Select(line => line.Contains(changed, StringComparison.Ordinal) ? line.Replace(">= 450", "> 450", StringComparison.Ordinal) : line)];
        Assert.Equal(lines, text.Count(line => line.Contains("> 450", StringComparison.Ordinal)));
        TransitionSystem system = site.Read(string.Join('\n', text)) ?? throw new InvalidOperationException("the text cannot be read");
        ImmutableArray<Expression> observed = [.. system.Definitions.Select(definition => definition.Value)];
        (Stepper plain, Stepper compiled) = (new Interpreter(system, observed), new CompiledStepper(system, observed));
        Random random = new(1);
        for (int scan = 1; scan <= Scans; scan++)
        {
            Variable input = system.Inputs[random.Next(system.Inputs.Length)];
            plain.Inputs[input.Index] = random.NextInt64(input.Range.Minimum, input.Range.Maximum + 1);
            plain.Inputs.CopyTo(compiled.Inputs, 0);
            plain.Step();
            compiled.Step();
            Assert.Equal(plain.States.ToArray(), compiled.States.ToArray());
            Assert.Equal(plain.Outputs, compiled.Outputs);
            Assert.Equal(plain.Observed, compiled.Observed);
        }
    }

    /// <summary>Where a long statement goes on in the next line.</summary>
    [GeneratedRegex(@"\n +(?=(AND|OR) )")]
    private static partial Regex GoesOn();
}
