using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

public sealed class CountedWayTests
{
    private const string Procedure = """
          step 10 "There"
            limit 1 h then hold "Too long"
            go 20 when S1
            go 30 when S2
          step 20 "Back"
            limit 1 h then hold "Too long"
            go 30 when S3
            go 10 when S1, at most 3 times then hold "Turned too often"
          step 30 "Done"
            limit 1 h then hold "Too long"
            go finish when S4
        """;

    [Fact]
    public void After_its_last_turn_the_way_asks_for_its_reaction()
    {
        // With S1 on, each turn takes two scans; at the fourth the count is full.
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(7);
        Assert.Equal((ProceduralState.Running, 3L, 1L), (bench.State, bench["U.step20.go_10.count"], bench["U.step20.active"]));

        bench.Scan();
        Assert.Equal((ProceduralState.Holding, 1L), (bench.State, bench["alarm U.step20.go_10.over"]));
        Assert.Equal(1, bench["U.step20.active"]);
    }

    [Fact]
    public void A_way_written_above_still_wins()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(7);
        bench.Set("S3.contact", 1);

        Assert.Equal((1L, ProceduralState.Running, 0L), (bench.Scan()["U.step30.active"], bench.State, bench["alarm U.step20.go_10.over"]));
    }

    [Fact]
    public void A_restart_grants_one_more_turn()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(12).Press("restart").Scan(3);
        Assert.Equal((ProceduralState.Running, 3L), (bench.State, bench["U.step20.go_10.count"]));

        Assert.Equal(ProceduralState.Held, bench.Scan(4).State);
    }

    [Fact]
    public void The_count_outlives_a_loss_of_power_and_ends_with_the_batch()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("S1.contact", 1);
        bench.Scan(4);
        bench.LosePower();
        Assert.Equal(2, bench["U.step20.go_10.count"]);

        bench.Set("S1.contact", 0);
        bench.Press("stop").Scan(2);
        bench.Press("reset");
        bench.Press("start");
        Assert.Equal(0, bench["U.step20.go_10.count"]);
    }
}
