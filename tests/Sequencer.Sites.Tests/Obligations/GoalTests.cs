using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;

namespace Sequencer.Sites.Tests.Obligations;

/// <summary>Steps and transitions: those that can be reached come with a run that does it, those that cannot with a proof.</summary>
public sealed class GoalTests
{
    private static readonly ImmutableArray<GoalVerdict> Verdicts =
        GoalProver.DecideAll(OwedProgram.System, OwedProgram.System.Goals, ProofOptions.Default, null, null, CancellationToken.None);

    [Fact]
    public void What_an_assumption_rules_out_is_proved_to_stand_there_in_vain() => Assert.Equal(
        ["U.step10.go_30"],
        Verdicts.OfType<Unreachable>().Select(verdict => verdict.Goal.Name));

    /// <summary>The step behind it is only told to be behind it: nothing leads there.</summary>
    [Fact]
    public void Everything_else_is_reached() => Assert.Equal(
        ["U.step30", "U.step30.go_finish"],
        Verdicts.Where(verdict => verdict is not (Reached or Unreachable)).Select(verdict => verdict.Goal.Name));

    [Fact]
    public void Each_way_reaches_its_goal_in_its_last_scan_and_keeps_the_assumptions() => Assert.All(Verdicts.OfType<Reached>(), reached =>
    {
        Interpreter interpreter = new(OwedProgram.System, [reached.Goal.Reached, .. OwedProgram.System.Assumptions.Select(assumption => assumption.Holds)]);
        List<long> when = [];
        TracePlayback.Play(reached.Way, interpreter, (stepper, scan) =>
        {
            Assert.DoesNotContain(0L, stepper.Observed[1..]);
            when.AddRange(stepper.Observed[0] == 1 ? [scan] : []);
            return true;
        });
        Assert.Equal([reached.Way.Scans - 1], when);
    });

    /// <summary>The first step is entered in the scan of the start, which needs the button let go first: two scans.</summary>
    [Fact]
    public void The_way_to_the_first_step_is_as_short_as_can_be() =>
        Assert.Equal(2, Verdicts.OfType<Reached>().Single(verdict => verdict.Goal.Name == "U.step10").Way.Scans);

    [Fact]
    public void A_cancelled_search_leaves_goals_open_and_throws_nothing()
    {
        using CancellationTokenSource cancelled = new();
        cancelled.Cancel();
        ImmutableArray<GoalVerdict> open = GoalProver.DecideAll(OwedProgram.System, OwedProgram.System.Goals, ProofOptions.Default, null, null, cancelled.Token);
        Assert.All(open, verdict => Assert.IsType<NotFound>(verdict));
    }
}
