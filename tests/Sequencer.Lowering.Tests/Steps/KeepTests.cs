using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>A stored action, qualifiers S and R of IEC 61131-3 (from memory): on from its step to the entry of another.</summary>
public sealed class KeepTests
{
    private const string Procedure = """
          step 10 "Set"
            keep M1 running until step 30
            limit 1 h then hold "Too long"
            go 20 when S1
          step 20 "Between"
            limit 1 h then hold "Too long"
            go 30 when S2
          step 30 "Reset"
            limit 1 h then hold "Too long"
            go finish when S3
        """;

    [Fact]
    public void It_lasts_from_the_entry_of_its_step_to_the_entry_of_its_end()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        Assert.Equal(1, bench["M1"]);
        bench.Set("S1.contact", 1);
        Assert.Equal((1L, 1L), (bench.Scan(5)["U.step20.active"], bench["M1"]));
        bench.Set("S2.contact", 1);
        Assert.Equal((1L, 0L), (bench.Scan()["U.step30.active"], bench["M1"]));
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("abort")]
    public void Stop_and_abort_end_it(string command)
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        Assert.Equal(0, bench.Press(command)["M1"]);

        bench.Scan(3).Press("reset").Scan(3);
        Assert.Equal((0L, 0L), (bench["M1"], bench["U.step10.keep_M1"]));
    }

    [Fact]
    public void A_hold_rests_it_and_a_restart_takes_it_up()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(3);
        Assert.Equal(0, bench.Press("hold")["M1"]);
        bench.Scan(5).Press("restart").Scan();
        Assert.Equal((1L, ProceduralState.Running), (bench.Scan()["M1"], bench.State));
    }

    [Fact]
    public void A_loss_of_power_forgets_nothing()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(3).LosePower();
        Assert.Equal(0, bench["M1"]);
        bench.Press("restart").Scan(2);
        Assert.Equal(1, bench["M1"]);
    }
}
