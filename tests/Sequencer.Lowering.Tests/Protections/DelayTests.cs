namespace Sequencer.Lowering.Tests.Protections;

/// <summary>Delays on either edge of a protection's condition; one scan is 100 ms.</summary>
public sealed class DelayTests
{
    [Fact]
    public void An_on_delay_lets_a_condition_count_after_its_time_and_starts_anew_when_it_breaks()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Block\" M1 blocked while S2, on after 0.3 s").Scan();
        bench.Set("S2.contact", 1);
        Assert.Equal([0, 0, 0, 1, 1], Scans(bench, 5, "I1.blocks"));
        bench.Set("S2.contact", 0);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
        bench.Set("S2.contact", 1);
        Assert.Equal([0, 0, 0, 1], Scans(bench, 4, "I1.blocks"));
    }

    [Fact]
    public void An_off_delay_lets_a_condition_count_on_after_its_end()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Block\" M1 blocked while S2, off after 0.3 s").Scan();
        bench.Set("S2.contact", 1);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        bench.Set("S2.contact", 0);
        Assert.Equal([1, 1, 1, 0, 0], Scans(bench, 5, "I1.blocks"));
    }

    [Fact]
    public void The_delays_of_an_interlock_with_unless_are_those_of_the_block()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Block\" M1 blocked unless S2, on after 0.2 s, off after 0.4 s").Scan();
        bench.Set("S2.contact", 1);
        bench.Scan(10);
        Assert.Equal(0, bench["I1.blocks"]);
        bench.Set("S2.contact", 0);
        Assert.Equal([0, 0, 1], Scans(bench, 3, "I1.blocks"));
        bench.Set("S2.contact", 1);
        Assert.Equal([1, 1, 1, 1, 0], Scans(bench, 5, "I1.blocks"));
    }

    [Fact]
    public void A_block_that_a_power_loss_ended_does_not_linger()
    {
        ProgramBench bench = BenchPrograms.Bench("interlock I1 \"Block\" M1 blocked while S2, off after 0.5 s").Scan();
        bench.Set("S2.contact", 1);
        bench.Scan();
        bench.Set("S2.contact", 0);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        Assert.Equal(0, bench.LosePower()["I1.blocks"]);
    }

    [Fact]
    public void A_trip_waits_for_an_unknown_condition_as_for_a_true_one()
    {
        ProgramBench bench = BenchPrograms.Bench("trip T1 \"High\" when LT1 > 8.00 m3, on after 0.2 s, then hold, if bad trip").Scan();
        bench.Set("LT1.fault", 1);
        Assert.Equal([0, 0, 0, 0, 0, 1], Scans(bench, 6, "T1.latched"));
    }

    private static long[] Scans(ProgramBench bench, int scans, string name) => [.. Enumerable.Range(0, scans).Select(_ => bench.Scan()[name])];
}
