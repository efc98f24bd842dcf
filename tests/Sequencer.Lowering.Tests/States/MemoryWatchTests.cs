using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.States;

/// <summary>State and steps are kept twice. Where the two differ the unit goes to its safe state, whatever it seems to be doing.</summary>
public sealed class MemoryWatchTests
{
    private const string Alarm = "alarm U.memory";

    private static readonly string[] Commands = ["start", "hold", "restart", "stop", "abort", "reset"];

    private const string TwoSteps = """
          step 10 "First"
            run M1
            limit 1 h then hold "Too long"
            go 20 when S1
          step 20 "Second"
            run M2
            limit 1 h then hold "Too long"
            go finish when S2
        """;

    public static TheoryData<ProceduralState, ProceduralState> EveryChangeOfState
    {
        get
        {
            TheoryData<ProceduralState, ProceduralState> data = [];
            foreach (ProceduralState kept in Enum.GetValues<ProceduralState>())
            {
                foreach (ProceduralState other in Enum.GetValues<ProceduralState>().Where(other => other != kept))
                {
                    data.Add(kept, other);
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(EveryChangeOfState))]
    public void A_state_that_was_not_written_aborts_from_wherever_it_seems_to_be(ProceduralState kept, ProceduralState other)
    {
        ProgramBench bench = StateTableTests.In(kept);
        bench.Corrupt("U.state", (long)other);
        bench.Scan();

        Assert.Equal(ProceduralState.Aborting, bench.State);
        Assert.Equal(0, bench["M1"]);
        Assert.Equal(1, bench[Alarm]);
        Assert.Equal(ProceduralState.Aborted, bench.Scan(2).State);
    }

    [Theory]
    [InlineData("U.step10.active", 0)]
    [InlineData("U.step20.active", 1)]
    [InlineData("U.step10.active.copy", 0)]
    [InlineData("U.step20.active.copy", 1)]
    [InlineData("U.state.copy", 3)]
    public void A_step_lost_won_or_kept_otherwise_stops_everything_at_once(string memory, long value)
    {
        ProgramBench bench = Running();
        bench.Corrupt(memory, value);
        bench.Scan();

        Assert.Equal(ProceduralState.Aborting, bench.State);
        Assert.Equal(0, bench["M1"] + bench["M2"]);
    }

    [Fact]
    public void A_leap_to_another_step_is_seen_though_the_steps_by_themselves_are_in_order()
    {
        ProgramBench bench = Running();
        bench.Corrupt("U.step10.active", 0);
        bench.Corrupt("U.step20.active", 1);
        bench.Scan();

        Assert.Equal(ProceduralState.Aborting, bench.State);
        Assert.Equal(0, bench["M2"]);
    }

    [Fact]
    public void Every_output_has_its_emergency_value_until_a_reset_and_no_start_is_taken_before_it()
    {
        ProgramBench bench = BenchPrograms.Started("output X2  valve  at %QX0.4  \"Cooling\"  safe closed  emergency open", TwoSteps);
        Assert.Equal(0, bench["X2"]);
        bench.Corrupt("U.step10.active", 0);

        Assert.Equal(1, bench.Scan()["X2"]);
        Assert.Equal(1, bench.Scan(50)["X2"]);
        Assert.Equal(ProceduralState.Aborted, bench.Press("start").State);

        Assert.Equal(ProceduralState.Idle, bench.Press("reset").State);
        Assert.Equal(0, bench["X2"]);
        Assert.Equal(0, bench[Alarm]);
        Assert.Equal(ProceduralState.Running, bench.Press("start").State);
        Assert.Equal(1, bench["M1"]);
    }

    [Fact]
    public void It_stays_through_a_loss_of_power()
    {
        ProgramBench bench = Running();
        bench.Corrupt("U.state", (long)ProceduralState.Idle);
        bench.Scan();
        bench.LosePower();

        Assert.Equal(1, bench[Alarm]);
        Assert.Equal(ProceduralState.Aborted, bench.Scan().State);
    }

    [Fact]
    public void Losses_of_power_alone_never_bring_it_about()
    {
        ProgramBench bench = Running();
        Random random = new(5);
        for (int scan = 0; scan < 2000; scan++)
        {
            bench.Set("S1.contact", random.Next(2));
            bench.Set("S2.contact", random.Next(2));
            bench.Set("power.returned", random.Next(10) == 0 ? 1 : 0);
            bench.Press(Commands[random.Next(Commands.Length)]);
            Assert.Equal(0, bench[Alarm]);
        }
    }

    private static ProgramBench Running()
    {
        ProgramBench bench = BenchPrograms.Started(string.Empty, TwoSteps);
        Assert.Equal(1, bench["M1"]);
        return bench;
    }
}
