using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>Semi-automatic: steps are let go by hand (spec/meaning.md, Steps let go by hand).</summary>
public sealed class HandAdvanceTests
{
    private const string Procedure = """
          step 10 "One"
            limit 1 s then go 30 "Too long"
            go 20 when S1
          step 20 "Two"
            limit 1 h then hold "Too long"
            go finish when S1
          step 30 "Late"
            limit 1 h then hold "Too long"
            go finish when S2
        """;

    private static ProgramBench ByHand()
    {
        ProgramBench bench = BenchPrograms.Started("advance by hand role Commissioning", Procedure);
        bench.Set("U.by_hand", 1);
        return bench;
    }

    [Fact]
    public void A_way_that_is_open_waits_for_the_button_and_one_press_is_one_way()
    {
        ProgramBench bench = ByHand();
        bench.Set("S1.contact", 1);
        bench.Scan(5);
        Assert.Equal(1, bench["U.step10.active"]);
        bench.Set("U.advance", 1);
        bench.Scan(5);
        Assert.Equal(1, bench["U.step20.active"]);
    }

    [Fact]
    public void A_press_opens_no_way_that_is_closed()
    {
        ProgramBench bench = ByHand();
        bench.Press("advance");
        bench.Set("S1.contact", 1);
        bench.Scan(3);
        Assert.Equal(1, bench["U.step10.active"]);
    }

    [Fact]
    public void The_way_out_of_a_limit_waits_for_nobody()
    {
        ProgramBench bench = ByHand();
        bench.Scan(12);
        Assert.Equal(1, bench["U.step30.active"]);
    }

    [Fact]
    public void A_change_of_mode_within_a_step_only_lets_it_go_or_wait()
    {
        ProgramBench bench = ByHand();
        bench.Set("S1.contact", 1);
        bench.Scan(5);
        bench.Set("U.by_hand", 0);
        bench.Scan();
        Assert.Equal((ProceduralState.Running, 1L), (bench.State, bench["U.step20.active"]));
        bench.Set("U.by_hand", 1);
        bench.Scan(5);
        Assert.Equal(1, bench["U.step20.active"]);
    }
}
