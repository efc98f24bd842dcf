namespace Sequencer.Lowering.Tests.Signals;

/// <summary>A failed channel (NAMUR NE 43) counts after its filter time; until then the last good value stands in.</summary>
public sealed class FilterTests
{
    private const string High = "interlock I1 \"High\" M2 blocked while LT1 > 5.00 m3";

    [Fact]
    public void A_fault_counts_when_it_has_lasted_the_filter_time()
    {
        ProgramBench bench = BenchPrograms.Bench(High);
        bench.Set("LT1", 100);
        bench.Scan();
        bench.Set("LT1.fault", 1);
        bench.Set("LT1", 1000);

        Assert.Equal([0, 0, 0, 1, 1], Enumerable.Range(0, 5).Select(_ => bench.Scan()["I1.blocks"]));
    }

    [Fact]
    public void A_short_fault_passes_unseen_and_begins_anew_the_next_time()
    {
        ProgramBench bench = BenchPrograms.Bench(High);
        bench.Set("LT1", 100);
        bench.Scan();
        for (int blink = 0; blink < 5; blink++)
        {
            bench.Set("LT1.fault", 1);
            Assert.Equal(0, bench.Scan(3)["I1.blocks"]);
            bench.Set("LT1.fault", 0);
            Assert.Equal(0, bench.Scan()["I1.blocks"]);
        }
    }

    [Fact]
    public void A_channel_that_is_bad_from_the_start_is_bad_at_once()
    {
        ProgramBench bench = BenchPrograms.Bench(High);
        bench.Set("LT1.fault", 1);

        Assert.Equal(1, bench.Scan()["I1.blocks"]);
    }

    [Fact]
    public void A_channel_that_is_bad_when_power_returns_is_bad_at_once()
    {
        ProgramBench bench = BenchPrograms.Bench(High).Scan(5);
        bench.Set("LT1.fault", 1);

        Assert.Equal(1, bench.LosePower()["I1.blocks"]);
    }

    [Fact]
    public void A_switch_with_delays_changes_after_them_and_counts_at_once_in_the_first_scan()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            input LSH1 switch normally closed at %IX1.0 "High" on after 0.2 s off after 0.3 s
            interlock I1 "High" M2 blocked while LSH1
            """);

        Assert.Equal(1, bench.Scan()["I1.blocks"]);
        bench.Set("LSH1.contact", 1);
        Assert.Equal([1, 1, 1, 0], Enumerable.Range(0, 4).Select(_ => bench.Scan()["I1.blocks"]));
        bench.Set("LSH1.contact", 0);
        Assert.Equal([0, 0, 1], Enumerable.Range(0, 3).Select(_ => bench.Scan()["I1.blocks"]));
    }
}
