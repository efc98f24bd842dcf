using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.StructuredText.Tests;

/// <summary>A text that was read, run scan by scan with its variables by name.</summary>
internal sealed class Scans
{
    private readonly Stepper _stepper;

    private Scans(TransitionSystem system)
    {
        System = system;
        _stepper = new Interpreter(system, [.. system.Definitions.Select(definition => definition.Value)]);
    }

    public TransitionSystem System { get; }

    /// <summary>The value after the last scan of an output, a state or a definition.</summary>
    public long this[string name]
    {
        get
        {
            int output = Find(System.Outputs.Select(one => one.Name), name);
            int state = Find(System.States.Select(one => one.Variable.Name), name);
            int definition = Find(System.Definitions.Select(one => one.Name), name);
            Assert.True(output >= 0 || state >= 0 || definition >= 0, $"no output, state or definition {name}");
            return output >= 0 ? _stepper.Outputs[output] : state >= 0 ? _stepper.States[state] : _stepper.Observed[definition];
        }
    }

    /// <summary>Reads text that must be without mistakes, but for warnings of a code that random text cannot help.</summary>
    public static Scans Of(string text, int scanMilliseconds = 1000, string? unit = null, string? allowed = null)
    {
        ReadingResult result = Read(text, scanMilliseconds, unit);
        Assert.True(result.Diagnostics.All(one => one.Code == allowed), DiagnosticRenderer.Render(result.Diagnostics));
        Assert.NotNull(result.System);
        return new Scans(result.System);
    }

    public static ReadingResult Read(string text, int? scanMilliseconds = 1000, string? unit = null) =>
        StructuredTextReader.Read(new SourceText("test.st", text), new ReadingOptions(unit, scanMilliseconds));

    /// <summary>One scan; inputs that are not named keep their values.</summary>
    public Scans Scan(params (string Name, long Value)[] inputs)
    {
        foreach ((string name, long value) in inputs)
        {
            int place = Find(System.Inputs.Select(one => one.Name), name);
            Assert.True(place >= 0, $"no input {name}");
            Assert.True(System.Inputs[place].Range.Contains(value), $"{value} is outside {name}");
            _stepper.Inputs[place] = value;
        }

        _stepper.Step();
        return this;
    }

    /// <summary>Outputs as a row of characters, a scan each, for inputs given the same way.</summary>
    public string Row(string output, params (string Input, string Row)[] inputs)
    {
        int scans = inputs[0].Row.Length;
        char[] row = new char[scans];
        for (int scan = 0; scan < scans; scan++)
        {
            Scan([.. inputs.Select(one => (one.Input, one.Row[scan] == '1' ? 1L : 0L))]);
            row[scan] = (char)('0' + this[output]);
        }

        return new string(row);
    }

    private static int Find(IEnumerable<string> names, string name) => names.ToList().IndexOf(name);
}
