namespace Sequencer.Lowering.Tests.Signals;

/// <summary>Counts (spec/meaning.md, Counts).</summary>
public sealed class CountTests
{
    private const string Coat = "count COAT \"Coat\" 0 .. 6.0 mm each S2 takes 2.5 mm, set to 6.0 mm when S3";

    private const string Out = "count OUT \"Out\" 0 .. 10.000 m3 each S2 adds 0.010 m3";

    /// <summary>A count that nothing reads is left out of the system.</summary>
    private static ProgramBench Bench(string declarations) => BenchPrograms.Bench(
        $"{declarations}\ninterlock IC \"Enough\" M2 blocked while {(declarations == Coat ? "COAT < 1.0 mm" : "OUT >= 5.000 m3")}");

    private static void Pulse(ProgramBench bench, int times = 1)
    {
        for (int time = 0; time < times; time++)
        {
            bench.Set("S2.contact", 1);
            bench.Scan();
            bench.Set("S2.contact", 0);
            bench.Scan();
        }
    }

    [Fact]
    public void Each_coming_counts_once_and_the_range_is_not_left()
    {
        ProgramBench bench = Bench(Coat);
        bench.Scan();
        Assert.Equal(0, bench["U.COAT"]);
        bench.Set("S3.contact", 1);
        bench.Scan();
        bench.Set("S3.contact", 0);
        Assert.Equal(12, bench["U.COAT"]);
        bench.Set("S2.contact", 1);
        bench.Scan(5);
        Assert.Equal(7, bench["U.COAT"]);
        bench.Set("S2.contact", 0);
        bench.Scan();
        Pulse(bench);
        Assert.Equal(2, bench["U.COAT"]);
        Pulse(bench, 3);
        Assert.Equal(0, bench["U.COAT"]);
    }

    [Fact]
    public void What_sets_it_wins_over_what_counts()
    {
        ProgramBench bench = Bench(Coat);
        bench.Scan();
        bench.Set("S3.contact", 1);
        bench.Set("S2.contact", 1);
        bench.Scan();
        Assert.Equal(12, bench["U.COAT"]);
    }

    [Fact]
    public void It_outlasts_a_loss_of_power_whose_return_counts_nothing()
    {
        ProgramBench bench = Bench(Out);
        bench.Scan();
        Pulse(bench, 3);
        bench.Set("S2.contact", 1);
        bench.LosePower();
        Assert.Equal(3, bench["U.OUT"]);
    }

    /// <summary>2 s in 4 parts of 5 scans: what is counted is seen for at least 20 and at most 25 scans.</summary>
    [Fact]
    public void Over_a_time_what_is_older_leaves_a_part_at_a_time()
    {
        for (int offset = 0; offset < 5; offset++)
        {
            ProgramBench bench = Bench($"{Out}, over 2 s in 4 parts");
            bench.Scan(1 + offset);
            bench.Set("S2.contact", 1);
            bench.Scan();
            int seen = 0;
            while (Sum(bench) == 1)
            {
                bench.Scan();
                seen++;
            }

            Assert.InRange(seen, 20, 25);
            Assert.Equal(0, Sum(bench));
        }
    }

    [Fact]
    public void Over_a_time_the_sum_is_what_came_in_the_last_parts()
    {
        ProgramBench bench = Bench($"{Out}, over 2 s in 4 parts");
        bench.Scan();
        List<int> comings = [];
        Random random = new(7);
        bool before = false;
        for (int scan = 0; scan < 400; scan++)
        {
            bool on = random.Next(3) == 0;
            bench.Set("S2.contact", on ? 1 : 0);
            bench.Scan();
            if (on && !before)
            {
                comings.Add(scan);
            }

            before = on;
            int least = comings.Count(coming => scan - coming < 20);
            int most = comings.Count(coming => scan - coming <= 25);
            Assert.InRange(Sum(bench), least, most);
        }
    }

    /// <summary>The sum that is kept is that of the parts.</summary>
    private static long Sum(ProgramBench bench)
    {
        Assert.Equal(Enumerable.Range(0, 5).Sum(part => bench[$"U.OUT.part{part}"]), bench["U.OUT"]);
        return bench["U.OUT"];
    }
}
