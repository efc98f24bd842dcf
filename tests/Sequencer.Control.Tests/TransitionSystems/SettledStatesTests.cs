using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.TransitionSystems;

/// <summary>What is said of a watch over memory by a look at the equations is so in every run, and nothing else reads it any more.</summary>
public sealed class SettledStatesTests
{
    [Fact]
    public void A_system_without_a_watch_is_its_own_rest()
    {
        TransitionSystem system = RandomSystem.Create(1);
        Assert.Same(system, system.Settled.Rest);
        Assert.Empty(system.Settled.All);
    }

    [Fact]
    public void Every_copy_and_the_latch_of_a_watch_are_settled()
    {
        for (int seed = 0; seed < 100; seed++)
        {
            TransitionSystem system = Watched(seed, 1);
            Assert.Equal(
                system.States.Where(state => state.Purpose == StatePurpose.Watch).Select(state => state.Variable),
                system.Settled.All.Select(state => state.Variable));
        }
    }

    [Fact]
    public void Rest_reads_none_and_runs_alike()
    {
        for (int seed = 0; seed < 100; seed++)
        {
            TransitionSystem system = Watched(seed, 1 + (seed % 3));
            HashSet<Variable> settled = [.. system.Settled.All.Select(state => state.Variable)];
            Assert.DoesNotContain(ExpressionGraph.Variables(system.Settled.Rest.States.Select(state => state.Next)), settled.Contains);

            Interpreter whole = new(system);
            Interpreter rest = new(system.Settled.Rest);
            Random random = new(seed);
            for (int scan = 0; scan < 200; scan++)
            {
                RandomSystem.FillInputs(system, random, whole.Inputs);
                whole.Inputs.CopyTo(rest.Inputs, 0);
                whole.Step();
                rest.Step();
                Assert.Equal(whole.States, rest.States);
                Assert.All(system.Settled.All, state => Assert.Equal(
                    state.Twin is { } twin ? whole.States[twin.Index] : state.Constant, whole.States[state.Variable.Index]));
            }
        }
    }

    [Fact]
    public void A_copy_that_is_written_otherwise_is_not_settled_and_so_neither_is_what_it_finds()
    {
        ExpressionBuilder build = new();
        TransitionSystem system = WatchedSystem.Of(RandomSystem.Create(3, builder: build), build, 2);
        StateVariable copy = system.States.First(state => state.Purpose == StatePurpose.Watch);
        Expression other = copy.Variable.Sort == Sort.Boolean ? build.Not(copy.Next) : build.Constant(copy.Variable.Range.Maximum);
        TransitionSystem wrong = TransitionSystem.Create(
            system.Name, system.ScanMilliseconds, system.Inputs, system.States.SetItem(copy.Variable.Index, copy with { Next = other }), system.Outputs, [], system.Assumptions, [], []);
        Assert.Null(wrong.Settled.All.FirstOrDefault(state => state.Variable == copy.Variable));
        Assert.Null(wrong.Settled.All.FirstOrDefault(state => state.Twin is null));
    }

    private static TransitionSystem Watched(int seed, int copies)
    {
        ExpressionBuilder build = new();
        return WatchedSystem.Of(RandomSystem.Create(seed, builder: build), build, copies);
    }
}
