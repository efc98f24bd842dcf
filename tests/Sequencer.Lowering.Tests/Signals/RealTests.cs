using Sequencer.Lowering.Supposing;

namespace Sequencer.Lowering.Tests.Signals;

/// <summary>What is truly so beside a reading (spec/meaning.md, Requirements and assumptions).</summary>
public sealed class RealTests
{
    private const string Tank = """
        real TANK "What stands in the tank" 0 .. 11.00 m3 read by LT1 within 0.10 m3, rises at most 6 m3/min while M1, falls at most 6 m3/min
        require H1 "Overflow" never TANK > 10.50 m3
        """;

    [Fact]
    public void It_is_near_its_reading_while_the_channel_is_good()
    {
        ProgramBench bench = Bench();
        bench.Set("LT1", 500);
        foreach ((long real, long holds) in new[] { (510L, 1L), (511, 0), (490, 1), (489, 0) })
        {
            bench.Set("TANK.real", real);
            bench.Scan();
            Assert.Equal(holds, Holds(bench, "TANK.read"));
        }

        bench.Set("LT1.fault", 1);
        bench.Set("TANK.real", 900);
        bench.Scan();
        Assert.Equal(1, Holds(bench, "TANK.read"));
    }

    /// <summary>6 m3/min is one step of 0.01 m3 in a scan of 100 ms; one more step is the rounding.</summary>
    [Fact]
    public void It_rises_only_while_something_fills_and_no_faster_than_declared()
    {
        ProgramBench bench = Bench();
        bench.Set("TANK.real", 100);
        bench.Scan(2);
        Assert.Equal(1, Holds(bench, "TANK.rises"));
        bench.Set("TANK.real", 101);
        bench.Scan(3);
        Assert.Equal(1, Holds(bench, "TANK.rises"));
        bench.Set("TANK.real", 102);
        bench.Scan();
        Assert.Equal(0, Holds(bench, "TANK.rises"));

        bench.Press("start");
        bench.Set("TANK.real", 100);
        bench.Scan();
        for (long real = 101; real < 130; real++)
        {
            bench.Set("TANK.real", real);
            bench.Scan();
            Assert.Equal(1, Holds(bench, "TANK.rises"));
        }

        bench.Set("TANK.real", 135);
        bench.Scan();
        Assert.Equal(0, Holds(bench, "TANK.rises"));
    }

    [Fact]
    public void A_requirement_speaks_of_it()
    {
        ProgramBench bench = Bench();
        bench.Set("TANK.real", 1050);
        Assert.Equal(1, bench.Scan()["H1"]);
        bench.Set("TANK.real", 1051);
        Assert.Equal(0, bench.Scan()["H1"]);
    }

    /// <summary>What fills the tank is the pump, not the command: it has run in the scan before, though nobody told it to.</summary>
    [Fact]
    public void It_rises_while_a_failed_pump_runs_on_and_not_while_one_stands_still()
    {
        ProgramBench runsOn = new(new Supposition { Failure = new Failure("M1", FailureMode.StaysOn) }, BenchPrograms.With(Tank));
        ProgramBench standsStill = new(new Supposition { Failure = new Failure("M1", FailureMode.StaysOff) }, BenchPrograms.With(Tank));
        foreach ((ProgramBench bench, long rises) in new[] { (runsOn, 1L), (standsStill, 0L) })
        {
            bench.Set("M1.fails", 1);
            bench.Set("TANK.real", 100);
            bench.Press("start");
            bench.Scan();
            Assert.Equal(1, Holds(bench, "TANK.rises"));
            bench.Set("M1.manual", 1);
            bench.Set("M1.manual.demand", 1 - rises);
            bench.Scan(2);
            Assert.Equal(1 - rises, bench["M1"]);
            bench.Set("TANK.real", 102);
            bench.Scan();
            Assert.Equal(rises, Holds(bench, "TANK.rises"));
        }
    }

    private static ProgramBench Bench() => BenchPrograms.Bench(Tank);

    private static long Holds(ProgramBench bench, string assumption)
    {
        Assert.Contains(assumption, bench.System.Assumptions.Select(each => each.Name));
        return bench[assumption];
    }
}
