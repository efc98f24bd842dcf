using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>Where a restart goes on (spec/meaning.md, Hold).</summary>
public sealed class RestartPointTests
{
    private static string Procedure(string first, string second) => $"""
          step 10 "Fill"
            run M1
            {first}
            limit 1 h then hold "Too long"
            go 20 when S1
          step 20 "Settle"
            {second}
            limit 1 h then hold "Too long"
            go finish when at step 20 stays 2 s
        """;

    private static ProgramBench Settling(string second, string first = "run M2")
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure(first, second));
        bench.Set("S1.contact", 1);
        bench.Scan();
        bench.Set("S1.contact", 0);
        return bench.Scan(15);
    }

    [Fact]
    public void A_step_begins_anew_in_itself()
    {
        ProgramBench bench = Settling("restart at step 20");
        Restart(bench);
        Assert.Equal((1L, 0L), (bench["U.step20.active"], bench["U.step20.clock"]));
        bench.Scan(20);
        Assert.Equal((ProceduralState.Running, 1L), (bench.State, bench["U.step20.active"]));
        bench.Scan();
        Assert.Equal(ProceduralState.Complete, bench.State);
    }

    [Fact]
    public void A_restart_goes_on_at_an_earlier_step()
    {
        ProgramBench bench = Settling("restart at step 10");
        Restart(bench);
        Assert.Equal((1L, 0L), (bench["U.step10.active"], bench["U.step20.active"]));
        bench.Scan(2);
        Assert.Equal((ProceduralState.Running, 1L), (bench.State, bench["M1"]));
    }

    [Fact]
    public void Only_the_step_that_says_so_goes_back()
    {
        ProgramBench bench = Settling("run M3", "restart at step 10");
        Restart(bench);
        Assert.Equal((0L, 1L), (bench["U.step10.active"], bench["U.step20.active"]));
    }

    private static void Restart(ProgramBench bench)
    {
        bench.Press("hold");
        bench.Scan(3);
        Assert.Equal(ProceduralState.Held, bench.State);
        bench.Press("restart");
    }
}
