using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>The clock of a limit counts while Running, freezes otherwise, and is armed again once by a restart.</summary>
public sealed class LimitTests
{
    private const string Short = """
          step 10 "Short"
            run M1
            limit 1 s then hold "Too long"
            go finish when S1
        """;

    private const string Out = """
          step 10 "Short"
            limit 1 s then go 20 "Too long"
            go finish when S1
          step 20 "Way out"
            limit 1 h then hold "Too long"
            go finish when S1
        """;

    [Fact]
    public void A_step_may_last_its_limit_and_no_longer()
    {
        ProgramBench bench = BenchPrograms.Started("", Short).Scan(9);

        Assert.Equal(ProceduralState.Running, bench.State);
        Assert.Equal(ProceduralState.Holding, bench.Scan().State);
        Assert.Equal(1, bench["alarm U.step10.limit"]);
    }

    [Fact]
    public void The_clock_freezes_while_held()
    {
        ProgramBench bench = BenchPrograms.Started("", Short).Scan(4).Press("hold").Scan(50).Press("restart").Scan();
        Assert.Equal((ProceduralState.Running, 6L), (bench.State, bench["U.step10.clock"]));

        Assert.Equal(ProceduralState.Running, bench.Scan(4).State);
        Assert.Equal(ProceduralState.Holding, bench.Scan().State);
    }

    [Fact]
    public void The_first_restart_after_expiry_gives_the_whole_limit_again_and_the_second_nothing()
    {
        ProgramBench bench = BenchPrograms.Started("", Short).Scan(10);
        Assert.Equal(ProceduralState.Holding, bench.State);
        bench.Scan().Press("restart").Scan();
        Assert.Equal(ProceduralState.Running, bench.Scan(9).State);
        Assert.Equal(ProceduralState.Holding, bench.Scan().State);

        bench.Scan().Press("restart").Scan();
        Assert.Equal(ProceduralState.Running, bench.State);
        Assert.Equal(ProceduralState.Holding, bench.Scan().State);
    }

    [Fact]
    public void The_way_out_of_a_limit_is_taken_when_it_has_run_out_and_yields_to_a_go()
    {
        ProgramBench bench = BenchPrograms.Started("", Out).Scan(9);
        Assert.Equal(1, bench["U.step10.active"]);
        Assert.Equal(1, bench.Scan()["U.step20.active"]);

        ProgramBench other = BenchPrograms.Started("", Out).Scan(9);
        other.Set("S1.contact", 1);
        Assert.Equal(ProceduralState.Complete, other.Scan().State);
    }
}
