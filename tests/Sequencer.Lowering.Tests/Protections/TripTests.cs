using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Protections;

/// <summary>Trips latch, tell who was first, and let go at a reset with the cause gone.</summary>
public sealed class TripTests
{
    private const string Two = """
        trip T1 "First"  when S2 then hold
        trip T2 "Second" when S3 then stop
        """;

    [Fact]
    public void A_trip_stays_latched_until_a_reset_with_the_cause_gone()
    {
        ProgramBench bench = BenchPrograms.Bench(Two).Scan();
        bench.Set("S2.contact", 1);
        Assert.Equal(1, bench.Scan()["T1.latched"]);
        Assert.Equal(1, bench.Press("reset")["T1.latched"]);

        bench.Set("S2.contact", 0);
        Assert.Equal(1, bench.Scan(5)["T1.latched"]);
        Assert.Equal(0, bench.Press("reset")["T1.latched"]);
    }

    [Fact]
    public void A_latched_trip_refuses_the_start_and_survives_a_loss_of_power()
    {
        ProgramBench bench = BenchPrograms.Bench(Two).Scan();
        bench.Set("S2.contact", 1);
        bench.Scan();
        bench.Set("S2.contact", 0);
        bench.LosePower().Scan().Press("start");

        Assert.Equal((ProceduralState.Idle, 1L, 1L), (bench.State, bench["T1.latched"], bench["alarm U.start.fault"]));
        bench.Press("reset");
        Assert.Equal(ProceduralState.Running, bench.Press("start").State);
    }

    [Theory]
    [InlineData(1, 0, 1)]
    [InlineData(0, 1, 2)]
    [InlineData(1, 1, 1)]
    public void The_first_trip_of_a_quiet_unit_is_its_first_out_and_ties_go_by_the_order_written(int first, int second, int expected)
    {
        ProgramBench bench = BenchPrograms.Bench(Two).Scan();
        bench.Set("S2.contact", first);
        bench.Set("S3.contact", second);
        bench.Scan();
        bench.Set("S2.contact", 1);
        bench.Set("S3.contact", 1);

        Assert.Equal(expected, bench.Scan()["U.first_out"]);
    }

    [Theory]
    [InlineData("hold", ProceduralState.Holding)]
    [InlineData("stop", ProceduralState.Stopping)]
    [InlineData("abort", ProceduralState.Aborting)]
    [InlineData("emergency", ProceduralState.Aborting)]
    [InlineData("alarm", ProceduralState.Running)]
    public void A_trip_asks_for_its_reaction_in_the_same_scan(string reaction, ProceduralState expected)
    {
        ProgramBench bench = BenchPrograms.Started($"trip T1 \"Trip\" when S2 then {reaction}");
        bench.Set("S2.contact", 1);

        Assert.Equal(expected, bench.Scan().State);
        Assert.Equal(1, bench["alarm T1"]);
    }

    [Theory]
    [InlineData("", 1, ProceduralState.Aborting)]
    [InlineData(" if bad trip", 1, ProceduralState.Aborting)]
    [InlineData(" if bad hold", 0, ProceduralState.Holding)]
    [InlineData(" if bad alarm", 0, ProceduralState.Running)]
    public void A_bad_signal_does_what_the_trip_says_of_it(string ifBad, int latched, ProceduralState expected)
    {
        ProgramBench bench = BenchPrograms.Started($"input LT2 0 .. 10.00 m3 at %IW4 \"Other\"\ntrip T1 \"High\" when LT2 > 5.00 m3 then abort{ifBad}");
        bench.Set("LT2.fault", 1);

        Assert.Equal((expected, (long)latched), (bench.Scan().State, bench["T1.latched"]));
    }

    [Fact]
    public void Each_group_has_its_own_first_out_and_reset()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            group VACUUM "Vacuum system"
            trip T1 "First"  when S2 then alarm
            trip T2 "Second" when S3 then alarm, group VACUUM
            trip T3 "Third"  when S4 then alarm, group VACUUM
            interlock I1 "Full" M1 blocked from S4 until not S4 and reset, group VACUUM
            require H1 "Any" never T1 latched and M1
            require H2 "Any" never T2 latched and M1
            require H3 "Any" never T3 latched and M1
            """).Scan();
        bench.Set("S4.contact", 1);
        Assert.Equal((0L, 2L), (bench.Scan()["U.first_out"], bench["U.VACUUM.first_out"]));
        bench.Set("S2.contact", 1);
        bench.Set("S3.contact", 1);
        Assert.Equal((1L, 2L), (bench.Scan()["U.first_out"], bench["U.VACUUM.first_out"]));
        foreach (string contact in new[] { "S2.contact", "S3.contact", "S4.contact" })
        {
            bench.Set(contact, 0);
        }

        bench.Press("reset");
        Assert.Equal((0L, 1L, 1L, 1L), (bench["T1.latched"], bench["T2.latched"], bench["T3.latched"], bench["I1.blocks"]));
        bench.Scan().Press("VACUUM.reset");
        Assert.Equal((0L, 0L, 0L, 0L), (bench["T2.latched"], bench["T3.latched"], bench["I1.blocks"], bench["U.VACUUM.first_out"]));
    }

    [Fact]
    public void Of_two_trips_of_a_group_in_one_scan_the_first_written_is_the_first_out()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            group VACUUM "Vacuum system"
            trip T1 "First"  when S2 then hold
            trip T2 "Second" when S3 then hold, group VACUUM
            trip T3 "Third"  when S4 then hold, group VACUUM
            """).Scan();
        bench.Set("S3.contact", 1);
        bench.Set("S4.contact", 1);
        Assert.Equal((0L, 1L), (bench.Scan()["U.first_out"], bench["U.VACUUM.first_out"]));
    }

    [Fact]
    public void An_emergency_gives_every_output_its_emergency_value_over_demand_interlock_and_manual()
    {
        ProgramBench bench = BenchPrograms.Started("""
            output FN1 motor at %QX1.0 "Fan" safe stopped emergency running
            output AG1 motor at %QX1.1 "Agitator" safe running emergency stopped
            interlock I1 "Fan" FN1 blocked while S3
            trip T1 "Emergency stop" when S2 then emergency
            """);
        Assert.Equal((1, 0, 1), (bench["M1"], bench["FN1"], bench["AG1"]));
        bench.Set("S2.contact", 1);
        bench.Set("S3.contact", 1);
        bench.Set("M1.manual", 1);
        bench.Set("M1.manual.demand", 1);
        Assert.Equal((0, 1, 0), (bench.Scan()["M1"], bench["FN1"], bench["AG1"]));

        bench.Set("S2.contact", 0);
        bench.Set("S3.contact", 0);
        bench.Set("M1.manual", 0);
        Assert.Equal((0, 1, 0), (bench.Scan(5)["M1"], bench["FN1"], bench["AG1"]));
        Assert.Equal((0, 0, 1), (bench.Press("reset")["M1"], bench["FN1"], bench["AG1"]));
    }
}
