namespace Sequencer.Lowering.Tests.Protections;

/// <summary>Two like devices for one demand: which of them runs, and when the other takes over.</summary>
public sealed class PairTests
{
    private const string Devices = """
        input  Y1  switch  at %IX1.0  "First pump running"
        input  Y2  switch  at %IX1.1  "Second pump running"
        output D1  motor  at %QX1.0  "First pump"   safe stopped  confirm Y1 within 0.3 s else alarm
        output D2  motor  at %QX1.1  "Second pump"  safe stopped  confirm Y2 within 0.3 s else alarm
        interlock I1 "First is blocked" D1 blocked while S2
        interlock I2 "Second is blocked" D2 blocked while S3

        """;

    private const string Pair = Devices + "pair P \"Pumps\" D1, D2 duty D1, changes over within 1 s";

    private const string Rotating = Pair + ", rotates each batch";

    private const string Procedure = """
          step 10 "Only"
            run P
            limit 1 h then hold "Too long"
            go finish when S1
        """;

    [Fact]
    public void The_one_on_duty_runs_alone()
    {
        ProgramBench bench = Running(Pair);
        for (int scan = 0; scan < 20; scan++)
        {
            Obey(bench).Scan();
            Assert.Equal((1L, 0L), (bench["D1"], bench["D2"]));
        }
    }

    [Fact]
    public void When_it_fails_the_other_takes_over_is_announced_and_stays_on_duty()
    {
        ProgramBench bench = Running(Pair);
        int change = 0;
        for (int scan = 0; scan < 10; scan++)
        {
            Assert.Equal(0L, bench["D1"] * bench["D2"]);
            bench.Set("Y2.contact", bench["D2"]);
            change += (int)bench.Scan()["alarm P.changed"];
        }

        Assert.Equal((0L, 1L, 1), (bench["D1"], bench["D2"], change));
        bench.Press("reset");
        bench.Set("Y2.contact", bench["D2"]);
        Assert.Equal((0L, 1L), (bench.Scan(3)["D1"], bench["D2"]));
    }

    [Fact]
    public void In_manual_or_interlocked_it_counts_as_not_available()
    {
        ProgramBench bench = Running(Pair);
        bench.Set("S2.contact", 1);
        Assert.Equal((0L, 0L), (bench.Scan()["D1"], bench["D2"]));
        Assert.Equal((0L, 1L), (bench.Scan()["D1"], bench["D2"]));
        bench.Set("S2.contact", 0);
        bench.Scan(2);
        bench.Set("D2.manual", 1);
        Assert.Equal((1L, 0L), (bench.Scan()["D1"], bench["D2"]));
    }

    [Fact]
    public void A_demand_that_none_can_meet_is_announced()
    {
        ProgramBench bench = Running(Pair);
        bench.Set("S2.contact", 1);
        bench.Set("S3.contact", 1);
        Assert.Equal((0L, 0L, 1L), (bench.Scan(3)["D1"], bench["D2"], bench["alarm P.none"]));
    }

    [Fact]
    public void By_hand_too_only_one_of_them_runs()
    {
        ProgramBench bench = BenchPrograms.Bench(Pair, Procedure);
        foreach (string device in (string[])["D1", "D2"])
        {
            bench.Set($"{device}.manual", 1);
            bench.Set($"{device}.manual.demand", 1);
        }

        Assert.Equal((1L, 0L), (bench.Scan(3)["D1"], bench["D2"]));
    }

    [Fact]
    public void A_rotating_pair_changes_at_each_start_and_keeps_the_duty_through_a_loss_of_power()
    {
        ProgramBench bench = Running(Rotating);
        Assert.Equal((1L, 0L), (bench["D1"], bench["D2"]));
        bench.Set("S1.contact", 1);
        bench.Scan();
        bench.Set("S1.contact", 0);
        Assert.Equal(0L, bench.Scan()["D1"]);
        bench.Press("reset");
        bench.Press("start");
        Assert.Equal((0L, 1L), (bench["D1"], bench["D2"]));
        Assert.Equal(1L, bench.LosePower()["P.second"]);
    }

    /// <summary>Whatever devices, operator and interlocks do: what the pair promises holds in every scan.</summary>
    [Fact]
    public void What_a_pair_promises_holds_in_random_runs()
    {
        Random random = new(11);
        ProgramBench bench = BenchPrograms.Bench(Rotating, Procedure);
        string[] inputs = ["Y1.contact", "Y2.contact", "S1.contact", "S2.contact", "S3.contact", "D1.manual", "D2.manual", "D1.manual.demand", "D2.manual.demand", "U.start", "U.reset", "U.hold", "U.restart"];
        int both = 0;
        for (int scan = 0; scan < 20_000; scan++)
        {
            foreach (string input in inputs)
            {
                if (random.Next(5) == 0)
                {
                    bench.Set(input, random.Next(2));
                }
            }

            bench.Scan();
            both += (int)(bench["D1"] + bench["D2"]);
            Assert.Equal((1L, 1L), (bench["P.apart"], bench["P.met"]));
        }

        Assert.True(both > 1000, $"hardly anything ran: {both} scans");
    }

    private static ProgramBench Running(string declarations) => BenchPrograms.Started(declarations, Procedure);

    private static ProgramBench Obey(ProgramBench bench)
    {
        bench.Set("Y1.contact", bench["D1"]);
        bench.Set("Y2.contact", bench["D2"]);
        return bench;
    }
}
