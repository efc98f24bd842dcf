using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Tests.Steps;

/// <summary>An answer belongs to one entry of its step; no answer has its own end.</summary>
public sealed class PromptTests
{
    private const string Procedure = """
          step 10 "Test"
            prompt Q1 "Is the spot test clear?" answers "clear", "yellow" role Operator, limit 2 s then hold "Nobody answered"
            limit 1 h then hold "Too long"
            go 20 when Q1 answered "clear"
            go 30 when Q1 answered "yellow"
          step 20 "Clear"
            limit 1 h then hold "Too long"
            go 10 when S2
            go finish when S1
          step 30 "Yellow"
            limit 1 h then hold "Too long"
            go 10 when S2
        """;

    [Theory]
    [InlineData(1, "U.step20.active")]
    [InlineData(2, "U.step30.active")]
    public void The_answer_leads_on_in_the_scan_after_it(long answer, string step)
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Scan(3);
        bench.Set("U.Q1.input", answer);

        Assert.Equal((0L, answer), (bench.Scan()[step], bench["U.Q1.answer"]));
        Assert.Equal(1, bench.Scan()[step]);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(-1)]
    public void What_is_no_answer_is_not_taken(long answer)
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Set("U.Q1.input", answer);
        bench.Scan(5);

        Assert.Equal((0L, 1L), (bench["U.Q1.answer"], bench["U.step10.active"]));
    }

    [Fact]
    public void A_button_held_from_before_the_question_answers_nothing()
    {
        ProgramBench bench = BenchPrograms.Bench("", Procedure);
        bench.Set("U.Q1.input", 1);
        bench.Scan(2).Press("start");
        bench.Scan(5);

        Assert.Equal((0L, 1L), (bench["U.Q1.answer"], bench["U.Q1.asks"]));
    }

    [Fact]
    public void The_step_entered_again_asks_again()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        Answer(bench, 1);
        bench.Scan();
        bench.Set("S2.contact", 1);
        bench.Scan();
        Assert.Equal((1L, 0L, 1L), (bench["U.step10.active"], bench["U.Q1.answer"], bench["U.Q1.asks"]));

        bench.Set("S2.contact", 0);
        bench.Scan(5);
        Assert.Equal(1, bench["U.step10.active"]);
        Answer(bench, 2);
        Assert.Equal(1, bench.Scan()["U.step30.active"]);
    }

    [Fact]
    public void No_answer_asks_for_the_reaction_and_a_restart_asks_anew()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Scan(19);
        Assert.Equal(ProceduralState.Running, bench.State);
        Assert.Equal((ProceduralState.Holding, 1L), (bench.Scan().State, bench["alarm U.Q1.late"]));

        bench.Scan(30);
        Assert.Equal(ProceduralState.Held, bench.State);
        bench.Press("restart").Scan();
        Assert.Equal((ProceduralState.Running, 1L), (bench.Scan().State, bench["U.Q1.asks"]));
        bench.Scan(15);
        Answer(bench, 1);
        Assert.Equal(1, bench.Scan()["U.step20.active"]);
    }

    [Fact]
    public void While_held_nothing_is_asked_and_nothing_answered()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        bench.Press("hold").Scan(2);
        Answer(bench, 1);

        Assert.Equal((0L, 0L), (bench["U.Q1.asks"], bench["U.Q1.answer"]));
    }

    [Fact]
    public void An_answer_outlives_a_loss_of_power()
    {
        ProgramBench bench = BenchPrograms.Started("", Procedure);
        Answer(bench, 2);
        bench.LosePower();
        Assert.Equal((ProceduralState.Held, 2L), (bench.State, bench["U.Q1.answer"]));

        bench.Press("restart").Scan();
        Assert.Equal(1, bench.Scan(2)["U.step30.active"]);
    }

    [Fact]
    public void A_record_keeps_the_last_usable_value_of_its_step_whatever_ends_the_batch()
    {
        ProgramBench bench = BenchPrograms.Bench("", """
              step 10 "Measure"
                record "Level" LT1
                limit 1 h then hold "Too long"
                go 20 when S1
              step 20 "Rest"
                limit 1 h then hold "Too long"
                go finish when S2
            """);
        bench.Set("LT1", 300);
        bench.Scan().Press("start").Scan(3);
        bench.Set("LT1", 420);
        bench.Scan();
        bench.Set("LT1.fault", 1);
        bench.Set("LT1", 900);
        bench.Scan(10).Press("abort").Scan(5);

        Assert.Equal((420L, 1L), (bench["U.step10.record1"], bench["U.step10.record1.taken"]));
        bench.Press("reset");
        bench.Press("start");
        Assert.Equal(0, bench["U.step10.record1.taken"]);
    }

    private static void Answer(ProgramBench bench, long answer)
    {
        bench.Set("U.Q1.input", answer);
        bench.Scan();
        bench.Set("U.Q1.input", 0);
    }
}
