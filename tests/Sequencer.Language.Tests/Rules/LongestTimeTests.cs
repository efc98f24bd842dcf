using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Rules;

/// <summary>Small procedures whose longest time can be worked out by hand; each state takes one scan of 100 ms more than its steps.</summary>
public sealed class LongestTimeTests
{
    private const int Scan = 100;
    private const long Minute = 60_000;

    [Fact]
    public void Steps_one_after_the_other_add_up() => Assert.Equal((90 * Minute) + Scan, Only(
        """
          step 10 "First"
            run M1
            limit 30 min then hold "Slow"
            go 20 when S1
          step 20 "Second"
            run M1
            limit 1 h then hold "Slow"
            go finish when S2
        """).Most);

    [Fact]
    public void Of_branches_beside_each_other_the_longest_counts() => Assert.Equal((49 * Minute) + Scan, Only(
        """
          step 10 "First"
            run M1
            limit 3 min then hold "Slow"
            go 20 and 30 when S1
          step 20 "Left"
            run M1
            limit 15 min then hold "Slow"
            go 25 when S2
          step 25 "Left, on"
            limit 25 min then hold "Slow"
          step 30 "Right"
            run M2
            limit 45 min then hold "Slow"
          join 25, 30 to 40 when S3
          step 40 "Last"
            limit 1 min then hold "Slow"
            go finish when S1
        """).Most);

    [Fact]
    public void Of_ways_to_choose_from_the_longest_counts() => Assert.Equal((13 * Minute) + Scan, Only(
        """
          step 10 "First"
            run M1
            limit 3 min then hold "Slow"
            go 20 when S1
            go finish when S2
          step 20 "Second"
            run M2
            limit 10 min then go finish "Slow"
            go finish when S3
        """).Most);

    [Fact]
    public void A_circle_is_gone_round_as_often_as_its_counted_way_lets_it() => Assert.Equal((4 * 3 * Minute) + Scan, Only(
        """
          step 10 "Wash"
            run M1
            limit 1 min then hold "Slow"
            go 20 when S1
          step 20 "Drain"
            run M2
            limit 2 min then hold "Slow"
            go finish when S2
            go 10 when S3, at most 3 times then hold "Not clean"
        """).Most);

    [Fact]
    public void A_circle_that_nothing_counts_has_no_bound() => Assert.Equal("step 10 may be entered again from step 20", Only(
        """
          step 10 "Wash"
            run M1
            limit 1 min then hold "Slow"
            go 20 when S1
          step 20 "Drain"
            run M2
            limit 2 min then hold "Slow"
            go finish when S2
            go 10 when S3
        """).Unbounded);

    [Fact]
    public void A_limit_that_only_alarms_is_no_bound() => Assert.Equal("the limit of step 10 only alarms", Only(
        """
          step 10 "Wait"
            limit 1 min then alarm "Slow"
            go finish when S1
        """).Unbounded);

    [Fact]
    public void A_step_that_is_left_after_a_time_for_sure_is_bounded_by_that() => Assert.Equal((5 * Minute) + (3 * Scan), Only(
        """
          step 10 "Wait"
            limit 10 min then alarm "Slow"
            go finish when at step 10 stays 5 min
        """).Most);

    [Fact]
    public void What_steps_expect_adds_up_and_what_they_do_not_say_is_counted()
    {
        StateTime time = Only(
            """
              step 10 "First"
                run M1
                expect 12 min
                limit 30 min then hold "Slow"
                go 20 when S1
              step 20 "Second"
                run M2
                limit 1 h then hold "Slow"
                go 30 when S2
              step 30 "Third"
                run M3
                expect 8 min
                limit 1 h then hold "Slow"
                go finish when S3
                go 10 when S4, at most 1 time then hold "Again"
            """);
        Assert.Equal((20 * Minute, 1), (time.Expected, time.Unsaid));
    }

    [Fact]
    public void Each_section_has_its_own_time()
    {
        ImmutableArray<StateTime> times = Of(
            """
              step 10 "First"
                run M1
                limit 30 min then hold "Slow"
                go finish when S1

            holding

              step 900 "Run down"
                limit 20 s then go finish "Cannot be"
                go 910 when S1

              step 910 "Flush"
                run M4
                limit 1 min then go finish "Not flushed"
                go finish when S2
            """);
        Assert.Equal([(ProceduralState.Running, (30 * Minute) + Scan), (ProceduralState.Holding, 80_000 + Scan)], times.Select(time => (time.State, time.Most ?? 0)));
    }

    private static StateTime Only(string procedure) => Assert.Single(Of(procedure));

    private static ImmutableArray<StateTime> Of(string procedure)
    {
        string program = $"""
            language 1
            unit U "Tank"
            input  S1  switch  at %IX0.0  "First"
            input  S2  switch  at %IX0.1  "Second"
            input  S3  switch  at %IX0.2  "Third"
            input  S4  switch  at %IX0.3  "Fourth"
            output M1  motor  at %QX0.0  "First motor"   safe stopped
            output M2  motor  at %QX0.1  "Second motor"  safe stopped
            output M3  motor  at %QX0.2  "Third motor"   safe stopped
            output M4  motor  at %QX0.3  "Fourth motor"  safe stopped, driven while holding
            procedure
            {procedure}

            """;
        CheckResult result = ProgramChecker.Check(new SourceText("program.seq", program), Scan);
        return LongestTime.Of(result.Program ?? throw new InvalidOperationException(DiagnosticRenderer.Render(result.Diagnostics)), Scan);
    }
}
