using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;

namespace Sequencer.Sites.Tests.Obligations;

/// <summary>Ways found before are played on the program as it is now, and count only if they still lead there.</summary>
public sealed class WayMemoryTests
{
    private static readonly ImmutableArray<Goal> Goals = OwedProgram.System.Goals;
    private static readonly ImmutableArray<Goal> Easy = [.. Goals.Where(goal => goal.Name is "U.step10" or "U.step20")];

    [Fact]
    public void A_way_is_found_again_without_a_search()
    {
        Memory memory = new();
        ImmutableArray<GoalVerdict> first = Decide(OwedProgram.System, Goals, memory);
        Searches searches = new();
        ImmutableArray<GoalVerdict> second = Decide(OwedProgram.System, Easy, memory, searches);
        Assert.Equal(0, searches.Count);
        Assert.Equal(
            first.OfType<Reached>().Where(reached => Easy.Contains(reached.Goal)).Select(reached => reached.Way.Scans),
            second.Cast<Reached>().Select(reached => reached.Way.Scans));
    }

    [Theory]
    [InlineData("")]
    [InlineData("ways 1")]
    [InlineData("ways 1\nLT1\nway\tU.step20\n5\t0=600\n")]
    [InlineData("ways 1\nLT1\nway\tU.step20\n-5\t0=600\n")]
    [InlineData("ways 1\nLT1\nway\tU.step20\n5\t7=600\t=\n")]
    [InlineData("ways 1\nLT1\nway\tU.step20\n5\t0=999999999999\n")]
    [InlineData("ways 1\nnothing of that name\nway\tno such goal\n5\n")]
    public void What_leads_nowhere_is_not_believed(string text)
    {
        Memory memory = new();
        ImmutableArray<GoalVerdict> first = Decide(OwedProgram.System, Easy, memory);
        memory.Texts[memory.Texts.Keys.Single()] = text;
        Searches searches = new();
        ImmutableArray<GoalVerdict> second = Decide(OwedProgram.System, Easy, memory, searches);
        Assert.NotEqual(0, searches.Count);
        Assert.Equal(first.Select(verdict => (verdict as Reached)?.Way.Scans), second.Select(verdict => (verdict as Reached)?.Way.Scans));
    }

    /// <summary>The clock of step 10 stands still in the other program: the way by its limit leads nowhere, the others still do.</summary>
    [Fact]
    public void A_way_that_an_edit_has_closed_is_not_believed()
    {
        Memory memory = new();
        Decide(OwedProgram.System, Goals, memory);
        TransitionSystem edited = OwedProgram.WithStuck("U.step910.clock");
        ImmutableArray<GoalVerdict> verdicts = Decide(edited, edited.Goals, memory);
        Assert.IsNotType<Reached>(verdicts.Single(verdict => verdict.Goal.Name == "U.step910.limit_go_finish"));
        Assert.IsType<Reached>(verdicts.Single(verdict => verdict.Goal.Name == "U.step20"));
    }

    private static ImmutableArray<GoalVerdict> Decide(TransitionSystem system, ImmutableArray<Goal> goals, Memory memory, Searches? searches = null) =>
        GoalProver.DecideAll(system, goals, ProofOptions.Default, memory, searches, CancellationToken.None);

    private sealed class Searches : IProgress<ProofProgress>
    {
        public int Count { get; private set; }

        public void Report(ProofProgress value) => Count += value.Engine == "search" ? 1 : 0;
    }
}
