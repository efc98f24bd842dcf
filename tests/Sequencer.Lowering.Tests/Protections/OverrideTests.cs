using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Protections;

/// <summary>A protection taken out of force: by whom, one at a time, and never for longer than its time.</summary>
public sealed class OverrideTests
{
    private const string Two = """
        interlock I1 "Block" M1 blocked while S2
        trip T1 "Trip" when S3 then hold
        override of I1 at most 0.5 s role Maintenance "Switch out for repair"
        override of T1 at most 2 s role Maintenance "Test of the trip"
        """;

    [Fact]
    public void An_override_lets_the_output_run_for_its_time_and_not_a_scan_longer()
    {
        ProgramBench bench = Blocked();
        bench.Set("I1.override", 1);
        Assert.Equal([1, 1, 1, 1, 1, 0, 0], Scans(bench, 7, "M1"));
        Assert.Equal((0L, 1L), (bench["alarm I1.override"], bench["alarm I1.override.expired"]));
    }

    [Fact]
    public void An_expired_override_is_told_until_the_command_is_taken_back_and_only_a_new_one_begins_another()
    {
        ProgramBench bench = Blocked();
        bench.Set("I1.override", 1);
        Assert.Equal((1L, 1L), (bench.Scan(50)["alarm I1.override.expired"], bench["I1.blocks"]));
        bench.Set("I1.override", 0);
        Assert.Equal(0, bench.Scan()["alarm I1.override.expired"]);
        bench.Set("I1.override", 1);
        Assert.Equal(1, bench.Scan()["M1"]);
    }

    [Fact]
    public void An_override_is_annunciated_while_it_lasts_and_ends_with_its_command()
    {
        ProgramBench bench = Blocked();
        bench.Set("I1.override", 1);
        Assert.Equal((1L, 1L), (bench.Scan()["alarm I1.override"], bench["M1"]));
        bench.Set("I1.override", 0);
        Assert.Equal((0L, 0L, 0L), (bench.Scan()["alarm I1.override"], bench["M1"], bench["alarm I1.override.expired"]));
    }

    [Fact]
    public void Without_the_role_it_is_refused_and_it_ends_when_the_role_goes()
    {
        ProgramBench bench = Blocked();
        bench.Set("U.role.Maintenance", 0);
        bench.Set("I1.override", 1);
        Assert.Equal((1L, 0L), (bench.Scan()["alarm I1.override.refused"], bench["M1"]));
        bench.Set("U.role.Maintenance", 1);
        Assert.Equal(0, bench.Scan()["M1"]);

        bench.Set("I1.override", 0);
        bench.Scan();
        bench.Set("I1.override", 1);
        Assert.Equal(1, bench.Scan()["M1"]);
        bench.Set("U.role.Maintenance", 0);
        Assert.Equal(0, bench.Scan()["M1"]);
    }

    [Fact]
    public void One_override_at_a_time_and_of_two_asked_for_at_once_the_first_written()
    {
        ProgramBench bench = Blocked();
        bench.Set("I1.override", 1);
        bench.Set("T1.override", 1);
        Assert.Equal((1L, 0L, 1L), (bench.Scan()["I1.override.now"], bench["T1.override.now"], bench["alarm T1.override.refused"]));
        bench.Set("T1.override", 0);
        bench.Scan();
        bench.Set("T1.override", 1);
        Assert.Equal((1L, 0L), (bench.Scan()["I1.override.now"], bench["T1.override.now"]));
    }

    [Fact]
    public void A_power_loss_ends_it_and_a_command_still_held_begins_none()
    {
        ProgramBench bench = Blocked();
        bench.Set("I1.override", 1);
        Assert.Equal(1, bench.Scan()["I1.override.now"]);
        Assert.Equal(0, bench.LosePower()["I1.override.now"]);
        Assert.Equal(0, bench.Scan(3)["I1.override.now"]);
    }

    [Fact]
    public void An_overridden_trip_does_not_latch_and_trips_when_the_time_is_over()
    {
        ProgramBench bench = BenchPrograms.Started(Two);
        bench.Set("U.role.Maintenance", 1);
        bench.Set("T1.override", 1);
        bench.Scan();
        bench.Set("S3.contact", 1);
        Assert.Equal((0L, ProceduralState.Running), (bench.Scan(19)["T1.latched"], bench.State));
        Assert.Equal((1L, ProceduralState.Holding), (bench.Scan()["T1.latched"], bench.State));
    }

    private static ProgramBench Blocked()
    {
        ProgramBench bench = BenchPrograms.Started(Two);
        bench.Set("U.role.Maintenance", 1);
        bench.Set("S2.contact", 1);
        Assert.Equal(0, bench.Scan()["M1"]);
        return bench;
    }

    private static long[] Scans(ProgramBench bench, int scans, string name) => [.. Enumerable.Range(0, scans).Select(_ => bench.Scan()[name])];
}
