namespace Sequencer.Lowering.Tests.Signals;

/// <summary><c>stays</c> is exact in scans; an edge needs a known scan before it.</summary>
public sealed class StaysAndEdgeTests
{
    [Fact]
    public void Stays_holds_now_and_in_as_many_scans_before_as_the_time_rounded_up()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Long\" M2 blocked while S2 stays 0.25 s").Scan();
        bench.Set("S2.contact", 1);

        Assert.Equal([0, 0, 0, 1, 1], Enumerable.Range(0, 5).Select(_ => bench.Scan()["I1.blocks"]));
        bench.Set("S2.contact", 0);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        bench.Set("S2.contact", 1);
        Assert.Equal([0, 0, 0, 1], Enumerable.Range(0, 4).Select(_ => bench.Scan()["I1.blocks"]));
    }

    [Fact]
    public void In_a_step_stays_begins_with_the_activation_and_anew_after_a_hold()
    {
        ProgramBench bench = BenchPrograms.Bench("", """
              step 10 "Wait"
                limit 1 h then hold "Too long"
                go finish when S2 stays 0.5 s
            """);
        bench.Set("S2.contact", 1);
        bench.Scan(50).Press("start");
        Assert.Equal(1, bench.Scan(4)["U.step10.active"]);

        bench.Press("hold").Scan(50).Press("restart").Scan();
        Assert.Equal(1, bench.Scan(4)["U.step10.active"]);
        Assert.Equal(0, bench.Scan()["U.step10.active"]);
    }

    [Theory]
    [InlineData("rising", 1, 0)]
    [InlineData("falling", 0, 1)]
    public void An_edge_lasts_one_scan_and_is_none_in_the_first_scan_or_after_a_loss_of_power(string word, int after, int before)
    {
        ProgramBench bench = BenchPrograms.Bench($"interlock I1 \"Edge\" M2 blocked while {word} S2");
        bench.Set("S2.contact", after);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        bench.Set("S2.contact", before);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        bench.Set("S2.contact", after);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);

        bench.Set("S2.contact", before);
        bench.Scan();
        bench.Set("S2.contact", after);
        Assert.Equal(0, bench.LosePower()["I1.blocks"]);
    }

    [Fact]
    public void No_sure_edge_comes_out_of_the_unknown()
    {
        ProgramBench bench = BenchPrograms.Started("input LT2 0 .. 10.00 m3 at %IW4 \"Other\"", """
              step 10 "Wait"
                limit 1 h then hold "Too long"
                go finish when rising LT2 > 5.00 m3
            """);
        bench.Set("LT2.fault", 1);
        bench.Scan();
        bench.Set("LT2.fault", 0);
        bench.Set("LT2", 900);
        Assert.Equal(1, bench.Scan()["U.step10.active"]);

        bench.Set("LT2", 100);
        bench.Scan();
        bench.Set("LT2", 900);
        Assert.Equal(0, bench.Scan()["U.step10.active"]);
    }
}
