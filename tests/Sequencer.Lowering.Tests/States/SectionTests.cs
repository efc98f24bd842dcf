using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>
/// The transient states of IEC 61512-1 (example procedural states; from memory) with steps of their own: they
/// last until their last step has finished, and a stronger command takes over in the scan in which it comes.
/// </summary>
public sealed class SectionTests
{
    private static readonly string[] Commands = ["", "start", "hold", "restart", "stop", "abort", "reset"];

    //                                     none        start       hold        restart     stop        abort       reset
    private static readonly (ProceduralState From, string Row)[] MatrixInMidStep =
    [
        (ProceduralState.Holding,    "Holding     Holding     Holding     Holding     Stopping    Aborting    Holding"),
        (ProceduralState.Restarting, "Restarting  Restarting  Holding     Restarting  Stopping    Aborting    Restarting"),
        (ProceduralState.Stopping,   "Stopping    Stopping    Stopping    Stopping    Stopping    Aborting    Stopping"),
        (ProceduralState.Aborting,   "Aborting    Aborting    Aborting    Aborting    Aborting    Aborting    Aborting"),
    ];

    public static TheoryData<ProceduralState, string, ProceduralState> Entries()
    {
        TheoryData<ProceduralState, string, ProceduralState> entries = [];
        foreach ((ProceduralState from, string row) in MatrixInMidStep)
        {
            string[] to = row.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            for (int column = 0; column < Commands.Length; column++)
            {
                entries.Add(from, Commands[column], Enum.Parse<ProceduralState>(to[column]));
            }
        }

        return entries;
    }

    public static TheoryData<ProceduralState, int, ProceduralState> Ends => new()
    {
        { ProceduralState.Holding, 110, ProceduralState.Held },
        { ProceduralState.Restarting, 120, ProceduralState.Running },
        { ProceduralState.Stopping, 130, ProceduralState.Stopped },
        { ProceduralState.Aborting, 140, ProceduralState.Aborted },
    };

    [Theory]
    [MemberData(nameof(Entries))]
    public void A_state_in_the_middle_of_its_steps_answers_each_command_as_the_matrix_says(ProceduralState from, string command, ProceduralState to)
    {
        ProgramBench bench = SectionBench.In(from).Scan();

        bench.Press(command.Length == 0 ? [] : [command]);

        Assert.Equal(to, bench.State);
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void A_state_ends_in_the_scan_after_its_last_step_has_finished(ProceduralState state, int step, ProceduralState end)
    {
        ProgramBench bench = SectionBench.In(state).Scan(5);
        Assert.Equal(1, bench[$"U.step{step}.active"]);
        Assert.Equal(1, bench["M2"]);

        bench.Set("S2.contact", 1);

        Assert.Equal(state, bench.Scan().State);
        Assert.Equal(0, bench["M2"]);
        Assert.Equal(end, bench.Scan().State);
        Assert.Equal(0, bench[$"alarm U.step{step}.limit"]);
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void A_limit_that_runs_out_alarms_and_ends_the_state(ProceduralState state, int step, ProceduralState end)
    {
        ProgramBench bench = SectionBench.In(state).Scan(SectionBench.LimitScans - 1);
        Assert.Equal(1, bench["M2"]);

        bench.Scan();

        Assert.Equal(1, bench[$"alarm U.step{step}.limit"]);
        Assert.Equal(state, bench.State);
        Assert.Equal(0, bench["M2"]);
        Assert.Equal(end, bench.Scan().State);
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void A_loss_of_power_ends_the_steps_and_nothing_moves_by_itself(ProceduralState state, int step, ProceduralState end)
    {
        ProceduralState after = state == ProceduralState.Restarting ? ProceduralState.Held : end;
        ProgramBench bench = SectionBench.In(state).Scan(3).LosePower();

        Assert.Equal(after, bench.State);
        Assert.Equal(0, bench[$"U.step{step}.active"]);
        Assert.Equal(0, bench["M2"]);
        Assert.Equal(0, bench["M1"]);
    }

    [Theory]
    [InlineData(ProceduralState.Holding)]
    [InlineData(ProceduralState.Restarting)]
    [InlineData(ProceduralState.Stopping)]
    public void Abort_takes_over_in_the_same_scan_with_its_own_steps(ProceduralState state)
    {
        ProgramBench bench = SectionBench.In(state).Scan(3);

        bench.Press("abort");

        Assert.Equal(1, bench["U.step140.active"]);
        Assert.Equal(0, bench["U.step110.active"] + bench["U.step120.active"] + bench["U.step130.active"]);
        Assert.Equal(0, bench["U.step10.active"]);
        Assert.Equal(ProceduralState.Aborting, bench.Scan(SectionBench.LimitScans).State);
        Assert.Equal(ProceduralState.Aborted, bench.Scan().State);
    }

    [Fact]
    public void The_steps_of_the_batch_wait_while_it_is_held_and_go_on_after_the_restart()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Running).Scan(4);
        bench.Press("hold");
        long clock = bench["U.step10.clock"];
        Assert.Equal(0, bench["M1"]);
        bench.Scan(SectionBench.LimitScans + 1);
        Assert.Equal(ProceduralState.Held, bench.State);
        bench.Press("restart").Scan(SectionBench.LimitScans);
        Assert.Equal(ProceduralState.Restarting, bench.State);
        Assert.Equal(clock, bench["U.step10.clock"]);

        bench.Scan();

        Assert.Equal(ProceduralState.Running, bench.State);
        Assert.Equal(1, bench["M1"]);
        Assert.Equal(clock + 1, bench["U.step10.clock"]);
    }

    [Fact]
    public void The_clock_of_a_section_begins_anew_each_time()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Restarting).Scan(7);
        bench.Press("hold").Scan(SectionBench.LimitScans - 1);
        Assert.Equal(ProceduralState.Holding, bench.State);
        Assert.Equal(ProceduralState.Held, bench.Scan(2).State);
    }

    [Fact]
    public void An_emergency_beats_the_steps_of_every_section()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Holding, "trip E1 \"Emergency stop\" when S4 then emergency");
        Assert.Equal(1, bench["M2"]);
        bench.Set("S4.contact", 1);

        bench.Scan();

        Assert.Equal(ProceduralState.Aborting, bench.State);
        Assert.Equal(0, bench["M2"]);
        Assert.Equal(ProceduralState.Aborted, bench.Scan(SectionBench.LimitScans + 1).State);
    }

    [Fact]
    public void An_interlock_beats_the_steps_of_every_section()
    {
        ProgramBench bench = SectionBench.In(ProceduralState.Stopping, "interlock I1 \"Full\" M2 blocked while S4");
        bench.Set("S4.contact", 1);

        Assert.Equal(0, bench.Scan()["M2"]);
        Assert.Equal(ProceduralState.Stopping, bench.State);
    }

    [Fact]
    public void What_no_step_of_the_section_drives_stays_at_its_row()
    {
        string held = SectionBench.Program("").Replace("\"Third motor\"   safe stopped", "\"Third motor\"   safe stopped held running", StringComparison.Ordinal);
        ProgramBench bench = new(held);
        bench.Scan().Press("start").Press("hold").Scan();

        Assert.Equal("0 1 1", $"{bench["M1"]} {bench["M2"]} {bench["M3"]}");
    }

    [Fact]
    public void A_restart_waits_for_its_time_and_for_its_steps()
    {
        ProgramBench waitLonger = SectionBench.In(ProceduralState.Restarting, "after power loss held, restart begins with 3 s wait");
        waitLonger.Set("S2.contact", 1);
        Assert.Equal(ProceduralState.Restarting, waitLonger.Scan(29).State);
        Assert.Equal(ProceduralState.Running, waitLonger.Scan().State);

        ProgramBench stepsLonger = SectionBench.In(ProceduralState.Restarting, "after power loss held, restart begins with 0.5 s wait");
        Assert.Equal(ProceduralState.Restarting, stepsLonger.Scan(SectionBench.LimitScans).State);
        Assert.Equal(ProceduralState.Running, stepsLonger.Scan().State);
    }

    [Theory]
    [InlineData("stop", ProceduralState.Stopping)]
    [InlineData("abort", ProceduralState.Aborting)]
    public void A_limit_may_ask_for_a_stronger_state(string reaction, ProceduralState state)
    {
        string procedure = SectionBench.AllFour.Replace("go finish \"Holding", $"{reaction} \"Holding", StringComparison.Ordinal);
        ProgramBench bench = SectionBench.In(ProceduralState.Holding, "", procedure);

        Assert.Equal(ProceduralState.Holding, bench.Scan(SectionBench.LimitScans - 1).State);
        Assert.Equal(state, bench.Scan().State);
    }

    [Fact]
    public void Branches_of_a_section_all_have_to_finish()
    {
        const string Procedure = """
              step 10 "Batch"
                run M1
                limit 1 h then hold "Too long"
                go finish when S1
            holding
              step 110 "First"
                limit 1 s then go finish "Too long"
                go 111 and 112 when S2
              step 111 "Left"
                run M2
                limit 2 s then go finish "Too long"
                go finish when S3
              step 112 "Right"
                limit 3 s then go finish "Too long"
                go finish when S4
            """;
        ProgramBench bench = SectionBench.In(ProceduralState.Holding, "", Procedure);
        bench.Set("S2.contact", 1);
        bench.Scan().Set("S4.contact", 1);
        Assert.Equal(ProceduralState.Holding, bench.Scan(3).State);
        Assert.Equal("1 0", $"{bench["U.step111.active"]} {bench["U.step112.active"]}");
        bench.Set("S3.contact", 1);

        Assert.Equal(ProceduralState.Held, bench.Scan(2).State);
    }
}
