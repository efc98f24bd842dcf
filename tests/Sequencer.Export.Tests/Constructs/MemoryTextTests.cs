using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>The text does in corrupted memory what the program does there, though no run of either comes to it.</summary>
public sealed class MemoryTextTests
{
    private static readonly DemoExport Export = ConstructExport.Of(
        "output X1  valve  at %QX0.2  \"Cooling\"  safe closed, emergency open", """
          step 10 "First"
            run M1
            limit 10 s then hold "Too long"
            go 20 and 30 when S1
          step 20 "Left"
            run M2
            limit 10 s then hold "Too long"
            go 40 when S2
          step 30 "Right"
            limit 10 s then hold "Too long"
            go 50 when S3
          step 40 "Left waits"
            limit 10 s then hold "Too long"
          step 50 "Right waits"
            limit 10 s then hold "Too long"
          join 40, 50 to 60 when S4
          step 60 "Last"
            limit 10 s then hold "Too long"
            go finish when S1
        """);

    [Fact]
    public void It_is_proved_equal() => ConstructExport.IsProvedEqual(Export);

    [Fact]
    public void A_watch_that_leaves_a_branch_out_is_not_called_equal() =>
        ConstructExport.IsFoundDifferent(Export, " OR (Branch2 <> Branch2_Copy)", "");

    [Fact]
    public void A_copy_that_is_not_written_is_found() => ConstructExport.IsFoundDifferent(Export, "Branch1_Copy := Branch1;", "");

    [Theory]
    [InlineData("State", (long)ProceduralState.Idle)]
    [InlineData("State", (long)ProceduralState.Aborted)]
    [InlineData("State_Copy", (long)ProceduralState.Complete)]
    [InlineData("Branch1", 2)]
    [InlineData("Branch1_Copy", 0)]
    [InlineData("Branch2", 3)]
    public void A_variable_of_the_text_that_something_else_writes_stops_everything_at_once(string name, long value)
    {
        Interpreter text = Running();
        text.SetState(StateOf(text, name), value);
        text.Step();
        Assert.Equal(0, Output(text, "M1"));
        Assert.Equal(1, Output(text, "X1"));
        Assert.Equal(1, Output(text, "Alarm_Memory"));
        Assert.Equal((long)ProceduralState.Aborting, text.States[StateOf(text, "State")]);
        text.Step();
        Assert.Equal((long)ProceduralState.Aborted, text.States[StateOf(text, "State")]);
        Assert.Equal(1, Output(text, "X1"));
    }

    private static Interpreter Running()
    {
        TransitionSystem system = Export.Read(Export.Export.Text) ?? throw new InvalidOperationException("the text cannot be read");
        Interpreter text = new(system);
        int start = system.Inputs.First(input => input.Name.Equals("Start", StringComparison.OrdinalIgnoreCase)).Index;
        text.Step();
        text.Inputs[start] = 1;
        text.Step();
        text.Step();
        Assert.Equal(1, Output(text, "M1"));
        Assert.Equal(0, Output(text, "Alarm_Memory"));
        return text;
    }

    private static int StateOf(Interpreter text, string name) =>
        text.System.States.First(state => state.Variable.Name.Equals(name, StringComparison.OrdinalIgnoreCase)).Variable.Index;

    private static long Output(Interpreter text, string name) =>
        text.Outputs[text.System.Outputs.Select(output => output.Name).ToList().FindIndex(output => output.Equals(name, StringComparison.OrdinalIgnoreCase))];
}
