using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>The five evolution rules of IEC 60848:2013, clause 4.5 (numbered as there; from memory).</summary>
public sealed class EvolutionTests
{
    private const string Parallel = """
          step 10 "Begin"
            limit 1 h then hold "Too long"
            go 20 and 30 when S1
          step 20 "Left"
            run M1
            limit 1 h then hold "Too long"
            go 25 when S2
          step 25 "Left waits"
            limit 1 h then hold "Too long"
          step 30 "Right"
            run M2
            limit 1 h then hold "Too long"
            go 35 when S3
          step 35 "Right waits"
            limit 1 h then hold "Too long"
          join 25, 35 to 40 when S4
          step 40 "End"
            run M3
            limit 1 h then hold "Too long"
            go finish when not S4
        """;

    private const string Again = """
          step 10 "Again and again"
            run M1 after 0.3 s
            limit 1 s then hold "Too long"
            go 10 when S2
            go finish when S1
        """;

    [Fact]
    public void Rule_1_the_initial_situation_is_no_step_and_a_start_activates_the_first()
    {
        ProgramBench bench = BenchPrograms.Bench("", Parallel).Scan();

        Assert.Equal("", Active(bench));
        Assert.Equal("10", Active(bench.Press("start")));
    }

    [Fact]
    public void Rule_2_a_join_is_not_cleared_before_all_steps_before_it_are_active()
    {
        ProgramBench bench = Begun();
        bench.Set("S2.contact", 1);
        bench.Set("S4.contact", 1);

        Assert.Equal("25 30", Active(bench.Scan(5)));

        bench.Set("S3.contact", 1);
        Assert.Equal("25 35", Active(bench.Scan()));
        Assert.Equal("40", Active(bench.Scan()));
    }

    [Fact]
    public void Rule_2_an_enabled_transition_is_not_cleared_without_its_condition()
    {
        Assert.Equal("20 30", Active(Begun().Scan(10)));
    }

    [Fact]
    public void Rule_2_a_condition_that_was_true_before_the_step_was_active_counts_from_the_next_scan()
    {
        ProgramBench bench = BenchPrograms.Bench("", Parallel).Scan();
        bench.Set("S1.contact", 1);

        Assert.Equal("10", Active(bench.Press("start")));
        Assert.Equal("20 30", Active(bench.Scan()));
    }

    [Fact]
    public void Rule_3_clearing_activates_all_steps_after_and_deactivates_all_before_in_one_scan()
    {
        ProgramBench bench = BenchPrograms.Started("", Parallel);
        bench.Set("S1.contact", 1);
        bench.Scan();

        Assert.Equal("20 30", Active(bench));
        Assert.Equal((1, 1), (bench["M1"], bench["M2"]));
    }

    [Fact]
    public void Rule_4_transitions_enabled_at_once_are_cleared_at_once()
    {
        ProgramBench bench = Begun();
        bench.Set("S2.contact", 1);
        bench.Set("S3.contact", 1);

        Assert.Equal("25 35", Active(bench.Scan()));
    }

    [Fact]
    public void Rule_5_a_step_both_left_and_entered_stays_active_and_its_clocks_start_anew()
    {
        ProgramBench bench = BenchPrograms.Started("", Again).Scan(5);
        Assert.Equal((6, 1), (bench["U.step10.clock"], bench["M1"]));
        bench.Set("S2.contact", 1);
        bench.Scan();
        bench.Set("S2.contact", 0);

        Assert.Equal("10", Active(bench));
        Assert.Equal((1, 0), (bench["U.step10.clock"], bench["M1"]));
        Assert.Equal(0, bench.Scan(2)["M1"]);
        Assert.Equal(1, bench.Scan()["M1"]);
    }

    [Fact]
    public void Of_two_ways_out_of_a_step_the_first_written_wins()
    {
        ProgramBench bench = BenchPrograms.Started("", Again);
        bench.Set("S1.contact", 1);
        bench.Set("S2.contact", 1);

        Assert.Equal("10", Active(bench.Scan()));
        Assert.Equal(ProceduralState.Running, bench.State);
    }

    [Fact]
    public void Steps_do_not_evolve_in_the_scan_of_a_hold_nor_while_held()
    {
        ProgramBench bench = BenchPrograms.Started("", Parallel);
        bench.Set("S1.contact", 1);
        bench.Press("hold");

        Assert.Equal("10", Active(bench));
        Assert.Equal("10", Active(bench.Scan(10)));
        bench.Press("restart").Scan();
        Assert.Equal(ProceduralState.Running, bench.State);
        Assert.Equal("20 30", Active(bench.Scan()));
    }

    [Theory]
    [InlineData("stop")]
    [InlineData("abort")]
    public void Stop_and_abort_end_all_steps_in_the_same_scan(string command)
    {
        ProgramBench bench = Begun().Press(command);

        Assert.Equal("", Active(bench));
        Assert.Equal((0, 0), (bench["M1"], bench["M2"]));
    }

    private static ProgramBench Begun()
    {
        ProgramBench bench = BenchPrograms.Started("", Parallel);
        bench.Set("S1.contact", 1);
        bench.Scan();
        bench.Set("S1.contact", 0);
        return bench;
    }

    private static string Active(ProgramBench bench) =>
        string.Join(' ', new[] { "10", "20", "25", "30", "35", "40" }.Where(step => bench.Knows($"U.step{step}.active") && bench[$"U.step{step}.active"] == 1));
}
