namespace Sequencer.Lowering.Tests.Units;

/// <summary>Shared equipment, first come first served (spec/meaning.md, Claims).</summary>
public sealed class ClaimTests
{
    private const string Skid = "output PS motor at %QX9.0 \"Shared pump\" safe stopped\nshared SKID \"Skid\" PS";

    [Fact]
    public void A_claim_is_granted_in_the_scan_after_and_another_units_demand_comes_a_scan_later()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("B", "start");
        Assert.Equal((0, 1, 0), (bench["A.SKID.owned_by.B"], bench["B.step10.claim1.waits"], bench["PS"]));
        bench.Scan();
        Assert.Equal((1, 0, 0), (bench["A.SKID.owned_by.B"], bench["B.step10.claim1.waits"], bench["PS"]));
        Assert.Equal(1, bench.Scan()["PS"]);
    }

    [Fact]
    public void The_units_own_step_drives_from_the_grant_on()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("A", "start");
        Assert.Equal(0, bench["PS"]);
        Assert.Equal(1, bench.Scan()["PS"]);
    }

    [Fact]
    public void Who_comes_later_waits_until_the_first_has_done()
    {
        ProgramBench bench = ClaimPrograms.Bench(3);
        bench.PressAt("C", "start");
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        bench.Scan(20);
        Assert.Equal((0, 0, 1), Owners(bench));
        Leave(bench, "C");
        Assert.Equal((1, 0, 0), Owners(bench.Scan()));
        Leave(bench, "A");
        Assert.Equal((0, 1, 0), Owners(bench.Scan()));
        Leave(bench, "B");
        Assert.Equal((0, 0, 0), Owners(bench.Scan()));
    }

    [Fact]
    public void Ties_go_by_the_order_of_the_site()
    {
        ProgramBench bench = ClaimPrograms.Bench(3);
        bench.Set("C.start", 1);
        bench.Set("A.start", 1);
        bench.PressAt("B", "start");
        Assert.Equal((1, 0, 0), Owners(bench.Scan()));
        Leave(bench, "A");
        Assert.Equal((0, 1, 0), Owners(bench.Scan()));
    }

    [Fact]
    public void A_step_that_waits_is_not_left_and_its_clocks_stand()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        bench.Set("SB1.contact", 1);
        bench.Scan(10);
        Assert.Equal((1, 0), (bench["B.step10.active"], bench["B.step10.clock"]));
        Leave(bench, "A");
        bench.Scan();
        Assert.Equal(1, bench["B.step20.active"]);
    }

    [Fact]
    public void The_units_own_outputs_are_driven_while_it_waits()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        Assert.Equal((1, 0), (bench["MB"], bench["A.SKID.owned_by.B"]));
        Assert.Equal(1, bench.Scan(5)["MB"]);
    }

    /// <summary>Half a second is five scans, counted from the grant.</summary>
    [Fact]
    public void What_is_driven_for_a_time_begins_with_the_grant()
    {
        ProgramBench bench = ClaimPrograms.Bench(2, drive: "run PS for 0.5 s");
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        bench.Scan(20);
        Assert.Equal(0, bench["PS"]);
        Leave(bench, "A");
        int on = 0;
        for (int scan = 0; scan < 20; scan++)
        {
            on += (int)bench.Scan()["PS"];
        }

        Assert.Equal(5, on);
    }

    [Theory]
    [InlineData("hold", 4)]
    [InlineData("stop", 7)]
    [InlineData("abort", 9)]
    public void A_wait_beyond_its_limit_asks_for_its_reaction(string reaction, int state)
    {
        ProgramBench bench = ClaimPrograms.Bench(2, claim: $"limit 1 s then {reaction} \"Skid is busy\"");
        bench.PressAt("A", "start");
        bench.Set("SA1.contact", 0);
        bench.Scan();
        bench.PressAt("B", "start");
        Assert.Equal(0, bench.Scan(9)["alarm B.step10.claim1"]);
        Assert.Equal(1, bench["B.state"]);
        Assert.Equal(1, bench.Scan()["alarm B.step10.claim1"]);
        Assert.Equal(state, bench.Scan()["B.state"]);
    }

    [Fact]
    public void A_restart_waits_anew()
    {
        ProgramBench bench = ClaimPrograms.Bench(2, claim: "limit 1 s then hold \"Skid is busy\"");
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        bench.Scan(13);
        Assert.Equal(4, bench["B.state"]);
        bench.PressAt("B", "restart");
        bench.Scan(8);
        Assert.Equal(1, bench["B.state"]);
        bench.Scan(6);
        Assert.Equal(4, bench["B.state"]);
    }

    [Fact]
    public void A_claim_is_kept_while_held_and_drives_nothing()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("B", "start");
        bench.Scan(3);
        bench.PressAt("A", "start");
        bench.PressAt("B", "hold");
        Assert.Equal(0, bench.Scan()["PS"]);
        bench.Scan(20);
        Assert.Equal((0, 1), (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"]));
        bench.PressAt("B", "restart");
        Assert.Equal(1, bench.Scan(3)["PS"]);
    }

    [Fact]
    public void Where_it_says_so_a_claim_is_released_while_held_and_asked_for_anew()
    {
        ProgramBench bench = ClaimPrograms.Bench(2, claim: "limit 1 min then hold \"Skid is busy\", released while held");
        bench.PressAt("B", "start");
        bench.Scan(3);
        bench.PressAt("A", "start");
        bench.PressAt("B", "hold");
        bench.Scan();
        Assert.Equal((1, 0), (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"]));
        bench.PressAt("B", "restart");
        bench.Scan(5);
        Assert.Equal((1, 0), (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"]));
        Leave(bench, "A");
        bench.Scan();
        Assert.Equal((0, 1), (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"]));
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("abort")]
    public void Stop_and_abort_release(string command)
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("B", "start");
        bench.PressAt("A", "start");
        bench.Scan(3);
        bench.PressAt("B", command);
        bench.Scan();
        Assert.Equal((1, 0), (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"]));
    }

    [Theory]
    [InlineData("", 1)]
    [InlineData(", released while held", 0)]
    public void A_loss_of_power_keeps_the_queue_and_drives_nothing(string released, int owner)
    {
        ProgramBench bench = ClaimPrograms.Bench(2, claim: $"limit 1 min then hold \"Skid is busy\"{released}");
        bench.PressAt("B", "start");
        bench.Scan(3);
        Assert.Equal(1, bench["PS"]);
        bench.LosePower();
        Assert.Equal((4, 0), (bench["B.state"], bench["PS"]));
        bench.Scan();
        Assert.Equal((owner, 0), (bench["A.SKID.owned_by.B"], bench["PS"]));
    }

    [Fact]
    public void The_next_step_that_claims_it_too_keeps_it_without_a_gap()
    {
        ProgramBench bench = new(
            UnitPrograms.Unit("A", Skid, Claiming("A", "SKID", "PS")),
            UnitPrograms.Unit("B", "", Claiming("B", "A.SKID", "A.PS")));
        bench.Set("SA2.contact", 1);
        bench.Set("SB2.contact", 1);
        bench.Scan();
        bench.PressAt("B", "start");
        bench.PressAt("A", "start");
        bench.Scan(2);
        Leave(bench, "B");
        for (int scan = 0; scan < 5; scan++)
        {
            Assert.Equal((1, 0, 1), (bench.Scan()["A.SKID.owned_by.B"], bench["A.SKID.owned_by.A"], bench["PS"]));
            Assert.Equal(1, bench["B.step20.active"]);
        }
    }

    [Fact]
    public void The_protections_of_the_unit_that_owns_the_outputs_stay_in_force()
    {
        ProgramBench bench = ClaimPrograms.Bench(2);
        bench.PressAt("B", "start");
        Assert.Equal(1, bench.Scan(3)["PS"]);
        bench.Set("ES.contact", 1);
        Assert.Equal(0, bench.Scan()["PS"]);
    }

    [Fact]
    public void Whether_it_is_granted_to_this_unit_or_taken_by_any_can_be_asked()
    {
        ProgramBench bench = new(
            UnitPrograms.Unit("A", $"{Skid}\nalarm BUSY \"Busy\" when SKID taken\nalarm MINE \"Mine\" when SKID granted", Claiming("A", "SKID", "PS")),
            UnitPrograms.Unit("B", "alarm GONE \"Taken\" when A.SKID taken\nalarm MINE \"Mine\" when A.SKID granted", Claiming("B", "A.SKID", "A.PS")));
        bench.Scan();
        bench.PressAt("B", "start");
        bench.Scan();
        Assert.Equal((1, 0, 1, 1), (bench["alarm A.BUSY"], bench["alarm A.MINE"], bench["alarm B.GONE"], bench["alarm B.MINE"]));
    }

    [Fact]
    public void Units_take_turns_at_what_has_no_outputs()
    {
        ProgramBench bench = new(
            UnitPrograms.Unit("A", "shared LINE \"Line\"", Claiming("A", "LINE", "MA")),
            UnitPrograms.Unit("B", "", Claiming("B", "A.LINE", "MB while A.LINE granted")));
        bench.Set("SA2.contact", 1);
        bench.Scan();
        bench.PressAt("A", "start");
        bench.PressAt("B", "start");
        bench.Scan(5);
        Assert.Equal((1, 0, 1, 0), (bench["A.LINE.owned_by.A"], bench["A.LINE.owned_by.B"], bench["MA"], bench["MB"]));
        bench.PressAt("A", "stop");
        bench.Scan(3);
        Assert.Equal((0, 1, 0, 1), (bench["A.LINE.owned_by.A"], bench["A.LINE.owned_by.B"], bench["MA"], bench["MB"]));
    }

    private static string Claiming(string letter, string skid, string pump) => $"""
          step 10 "One"
            claim {skid} limit 1 min then hold "Skid is busy"
            run {pump}
            limit 1 h then hold "Too long"
            go 20 when S{letter}1
          step 20 "Two"
            claim {skid} limit 1 min then hold "Skid is busy"
            run {pump}
            open X{letter}
            limit 1 h then hold "Too long"
            go finish when S{letter}2
        """;

    private static void Leave(ProgramBench bench, string unit)
    {
        bench.Set($"S{unit}1.contact", 1);
        bench.Scan();
        bench.Set($"S{unit}1.contact", 0);
    }

    private static (long, long, long) Owners(ProgramBench bench) => (bench["A.SKID.owned_by.A"], bench["A.SKID.owned_by.B"], bench["A.SKID.owned_by.C"]);
}
