using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Units;

/// <summary>One unit starts another, once a request (spec/meaning.md, Starting another unit).</summary>
public sealed class StartRequestTests
{
    private const string Hand = """
          step 10 "Fill"
            run MA
            limit 1 h then hold "Too long"
            go 20 when SA1
          step 20 "Hand over"
            ask B to start
            limit 1 h then hold "Too long"
            go finish when B started
        """;

    private static ProgramBench Bench(string startConditions = "")
    {
        ProgramBench bench = new(UnitPrograms.Unit("A", "", Hand), UnitPrograms.Unit("B", $"start asked by A\n{startConditions}", UnitPrograms.TwoSteps("B")));
        bench.Set("SB2.contact", 1);
        return bench.Scan(2);
    }

    private static ProceduralState State(ProgramBench bench, string unit) => (ProceduralState)bench[$"{unit}.state"];

    private static ProgramBench AtHandOver(string startConditions = "")
    {
        ProgramBench bench = Bench(startConditions);
        bench.PressAt("A", "start");
        bench.Set("SA1.contact", 1);
        bench.Scan();
        bench.Set("SA1.contact", 0);
        return bench;
    }

    [Fact]
    public void The_request_is_seen_taken_and_answered_a_scan_later_each()
    {
        ProgramBench bench = AtHandOver();
        Assert.Equal((1, ProceduralState.Idle), (bench["A.step20.active"], State(bench, "B")));
        bench.Scan();
        Assert.Equal((1, ProceduralState.Running), (bench["A.step20.active"], State(bench, "B")));
        bench.Scan();
        Assert.Equal(ProceduralState.Complete, State(bench, "A"));
        Assert.Equal((1, 1), (bench["B.step10.active"], bench["MB"]));
        bench.Scan(2);
        Assert.Equal(0, bench["B.asked.A.taken"]);
    }

    [Fact]
    public void A_unit_in_progress_is_not_started_and_starts_when_it_is_complete()
    {
        ProgramBench bench = Bench();
        bench.PressAt("B", "start");
        bench.PressAt("A", "start");
        bench.Set("SA1.contact", 1);
        bench.Scan(20);
        Assert.Equal((1, 1), (bench["A.step20.active"], bench["B.step10.active"]));
        bench.Set("SB1.contact", 1);
        bench.Scan();
        bench.Set("SB1.contact", 0);
        bench.Set("SB2.contact", 0);
        bench.Scan();
        Assert.Equal(ProceduralState.Complete, State(bench, "B"));
        bench.Set("SB2.contact", 1);
        bench.Scan();
        Assert.Equal((ProceduralState.Running, 1), (State(bench, "B"), bench["B.step10.active"]));
        Assert.Equal(ProceduralState.Complete, State(bench.Scan(), "A"));
    }

    [Fact]
    public void A_hold_of_the_asking_unit_neither_starts_nor_starts_twice()
    {
        ProgramBench bench = AtHandOver();
        bench.PressAt("A", "hold");
        Assert.Equal(ProceduralState.Running, State(bench, "B"));
        FinishB(bench);
        bench.Scan(50);
        Assert.Equal((ProceduralState.Held, ProceduralState.Complete), (State(bench, "A"), State(bench, "B")));
        bench.PressAt("A", "restart");
        bench.Scan(3);
        Assert.Equal((ProceduralState.Complete, ProceduralState.Complete), (State(bench, "A"), State(bench, "B")));
    }

    [Fact]
    public void A_held_unit_asks_for_nothing_until_it_is_restarted()
    {
        ProgramBench bench = Bench();
        bench.PressAt("A", "start");
        bench.Set("SA1.contact", 1);
        bench.Set("A.hold", 1);
        bench.Scan();
        bench.Set("A.hold", 0);
        bench.Scan(10);
        Assert.Equal((ProceduralState.Held, ProceduralState.Idle), (State(bench, "A"), State(bench, "B")));
        bench.PressAt("A", "restart");
        bench.Scan(4);
        Assert.Equal(ProceduralState.Running, State(bench, "B"));
    }

    [Fact]
    public void A_loss_of_power_starts_nothing_and_after_the_restart_the_start_is_not_repeated()
    {
        ProgramBench bench = AtHandOver();
        bench.LosePower();
        Assert.Equal((ProceduralState.Held, ProceduralState.Idle), (State(bench, "A"), State(bench, "B")));
        bench.Scan(20);
        Assert.Equal(ProceduralState.Idle, State(bench, "B"));

        bench = AtHandOver();
        bench.Scan();
        bench.LosePower();
        Assert.Equal((ProceduralState.Held, ProceduralState.Held), (State(bench, "A"), State(bench, "B")));
        bench.PressAt("A", "restart");
        bench.Scan(3);
        Assert.Equal((ProceduralState.Complete, ProceduralState.Held), (State(bench, "A"), State(bench, "B")));
    }

    [Fact]
    public void An_abort_takes_the_request_back()
    {
        ProgramBench bench = AtHandOver("start only when SB1 \"Not ready\"");
        bench.Scan(5);
        Assert.Equal((ProceduralState.Idle, 1), (State(bench, "B"), bench["alarm B.start1"]));
        bench.PressAt("A", "abort");
        bench.Set("SB1.contact", 1);
        bench.Scan(5);
        Assert.Equal((ProceduralState.Idle, 0), (State(bench, "B"), bench["alarm B.start1"]));
    }

    [Fact]
    public void A_start_condition_delays_the_start_that_is_asked_for()
    {
        ProgramBench bench = AtHandOver("start only when SB1 \"Not ready\"");
        bench.Scan(5);
        bench.Set("SB1.contact", 1);
        bench.Scan();
        Assert.Equal(ProceduralState.Running, State(bench, "B"));
    }

    private static void FinishB(ProgramBench bench)
    {
        bench.Set("SB1.contact", 1);
        bench.Scan();
        bench.Set("SB1.contact", 0);
        bench.Set("SB2.contact", 0);
        bench.Scan();
        bench.Set("SB2.contact", 1);
    }
}
