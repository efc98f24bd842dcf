using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Writing;

/// <summary>The program around the blocks: addresses, scaling of raw counts, the task and the check of its scans.</summary>
public sealed class PlantProgramTests
{
    private static readonly string Text = SiteExport.Of(SiteExport.First, SiteExport.Second);

    [Fact]
    public void Inputs_and_outputs_of_the_program_are_the_addresses()
    {
        TransitionSystem system = Read(Text);
        Assert.Equal(100, system.ScanMilliseconds);
        Assert.Equal(["AI_LT1", "DI_S1", "DI_S2"], system.Inputs.Select(input => input.Name).Where(name => name.Contains("I_", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.Equal(["AO_SC1", "DO_P1", "DO_P2"], system.Outputs.Select(output => output.Name).Where(name => name.Contains("O_", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    /// <summary>0 .. 5.00 m3 in steps of 0.01 m3 over 16 mA: 32 microamperes a step, half a step rounds up; beyond the ends the reading stands.</summary>
    [Theory]
    [InlineData(3700, 0)]
    [InlineData(4000, 0)]
    [InlineData(4015, 0)]
    [InlineData(4016, 1)]
    [InlineData(12000, 250)]
    [InlineData(19983, 499)]
    [InlineData(19984, 500)]
    [InlineData(20000, 500)]
    [InlineData(20900, 500)]
    public void A_loop_current_becomes_a_reading(int microamperes, int reading)
    {
        Run run = new(Text, "LT1_Reading");
        run.Scan(("AI_LT1", microamperes));
        Assert.Equal(reading, run["LT1_Reading"]);
    }

    /// <summary>NAMUR NE 43: 3.6 and 21 mA are failures, 3.8 to 20.5 mA is sound, between these what it was is kept.</summary>
    [Fact]
    public void A_loop_is_bad_until_it_has_been_seen_sound_and_between_the_limits_stays_what_it_was()
    {
        Run run = new(Text, "LT1_Loop.Fault");
        Assert.Equal("1100011100", run.Row("LT1_Loop.Fault", "AI_LT1", 3700, 20600, 3800, 3601, 20999, 21000, 20501, 3799, 20500, 4000));
    }

    /// <summary>A set value of 10 .. 60 % at rest is 4 mA; 35 % in the step is 12 mA.</summary>
    [Fact]
    public void A_set_value_becomes_a_loop_current()
    {
        Run run = new(Text, "AO_SC1");
        run.Scan(("AI_LT1", 12000), ("A_Start", 0));
        Assert.Equal(4000, run["AO_SC1"]);
        run.Scan(("AI_LT1", 12000), ("A_Start", 1));
        Assert.Equal(12000, run["AO_SC1"]);
    }

    [Fact]
    public void Scans_of_equal_length_are_no_overrun()
    {
        Run run = new(Text, "Scan_Overrun");
        for (int scan = 0; scan < 1_000; scan++)
        {
            run.Scan();
            Assert.Equal(0, run["Scan_Overrun"]);
        }
    }

    /// <summary>Where 95 scans fit into what should be 100, the timer is done too early for the count; what was told stays until it is cleared.</summary>
    [Fact]
    public void Lost_scans_are_told_until_they_are_cleared()
    {
        const string turn = "PT := T#10s";
        Assert.Contains(turn, Text, StringComparison.Ordinal);
        Run run = new(Text.Replace(turn, "PT := T#9500ms", StringComparison.Ordinal), "Scan_Overrun");
        List<int> told = [];
        for (int scan = 0; scan < 150; scan++)
        {
            run.Scan();
            told.Add((int)run["Scan_Overrun"]);
        }

        Assert.Equal(95, told.IndexOf(1));
        Assert.DoesNotContain(0, told.Skip(95));
        run.Scan(("Clear_Scan_Overrun", 1));
        Assert.Equal(0, run["Scan_Overrun"]);
    }

    private static TransitionSystem Read(string text)
    {
        ReadingResult read = StructuredTextReader.Read(new SourceText("text.st", text), new ReadingOptions());
        return read.System ?? throw new InvalidOperationException(DiagnosticRenderer.Render(read.Diagnostics));
    }

    /// <summary>The whole text, read back, scan by scan; what is not given is 0.</summary>
    private sealed class Run
    {
        private readonly TransitionSystem _system;
        private readonly Interpreter _interpreter;
        private readonly string[] _names;

        public Run(string text, params string[] names)
        {
            _system = Read(text);
            _names = names;
            _interpreter = new Interpreter(_system, [.. names.Select(Value)]);
        }

        public long this[string name] => _interpreter.Observed[Array.IndexOf(_names, name)];

        public void Scan(params ReadOnlySpan<(string Name, long Value)> inputs)
        {
            Array.Clear(_interpreter.Inputs);
            foreach ((string name, long value) in inputs)
            {
                _interpreter.Inputs[_system.Inputs.ToList().FindIndex(input => input.Name == name)] = value;
            }

            _interpreter.Step();
        }

        public string Row(string name, string input, params int[] values)
        {
            string row = "";
            foreach (int value in values)
            {
                Scan((input, value));
                row += this[name].ToString(System.Globalization.CultureInfo.InvariantCulture);
            }

            return row;
        }

        private Expression Value(string name) =>
            _system.Outputs.FirstOrDefault(output => output.Name == name)?.Value
            ?? _system.Definitions.FirstOrDefault(definition => definition.Name == name)?.Value
            ?? _system.States.First(state => state.Variable.Name == name).Next;
    }
}
