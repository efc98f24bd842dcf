using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Tests.ExplicitState;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.KnownAnswers;

public sealed class KnownAnswerTests
{
    /// <summary>5: Model Checking Contest, model Philosophers, 243 markings; 3 and 6 recomputed: 3 to the n. Deadlocks: all left or all right.</summary>
    [Theory]
    [InlineData(3, 27)]
    [InlineData(5, 243)]
    [InlineData(6, 729)]
    public void Dining_philosophers_reach_as_many_states_as_published_and_two_are_dead(int count, int states)
    {
        TransitionSystem system = DiningPhilosophers.Create(count);
        ExplicitSearch search = new(system);
        Assert.Null(search.ShortestFailure());
        Assert.Equal(states, search.Reached);
        Assert.Equal(2, search.Dead);
        Assert.IsType<Holds>(Decide(system));
    }

    [Fact]
    public void Petersons_algorithm_excludes_and_without_its_turn_does_not()
    {
        Assert.IsType<Holds>(Decide(MutualExclusion.Peterson(broken: false)));
        TransitionSystem broken = MutualExclusion.Peterson(broken: true);
        Fails fails = Assert.IsType<Fails>(Decide(broken));
        Assert.Equal(new ExplicitSearch(broken).ShortestFailure(), (int)fails.Trace.Scans);
    }

    [Theory]
    [InlineData(4, 3)]
    [InlineData(4, 4)]
    [InlineData(4, 5)]
    [InlineData(9, 8)]
    [InlineData(9, 9)]
    [InlineData(300, 299)]
    [InlineData(300, 300)]
    public void Fischers_protocol_excludes_exactly_when_the_wait_is_at_least_the_longest_write(int write, int wait)
    {
        TransitionSystem system = MutualExclusion.Fischer(write, wait);
        if (write < 10)
        {
            Assert.Equal(wait >= write, new ExplicitSearch(system).ShortestFailure() is null);
        }

        Assert.Equal(wait >= write, Decide(system) is Holds);
        Assert.Equal(wait < write, Decide(system) is Fails);
    }

    [Theory]
    [InlineData(6, 2, 4)]
    [InlineData(6, 3, 4)]
    [InlineData(9, 9, 0)]
    [InlineData(9, 4, 6)]
    [InlineData(6_000, 2_000, 4_000)]
    [InlineData(6_000, 2_001, 4_000)]
    public void The_gate_is_closed_for_the_train_exactly_when_there_is_time_enough(int approach, int delay, int closing)
    {
        bool holds = delay + closing <= approach;
        TransitionSystem system = TrainGate.Create(approach, delay, closing);
        if (approach < 10)
        {
            Assert.Equal(holds, new ExplicitSearch(system).ShortestFailure() is null);
            Verdict verdict = Prover.Decide(system, system.Requirements[0], ProofOptions.Default with { Engines = Engines.Diagrams }, null, CancellationToken.None);
            Assert.Equal((holds, !holds), (verdict is Holds, verdict is Fails { IsShortest: true }));
        }

        Assert.Equal(holds, Decide(system) is Holds);
        Assert.Equal(!holds, Decide(system) is Fails);
    }

    [Fact]
    public void An_alarm_after_ninety_thousand_scans_comes_never_earlier_and_then_comes()
    {
        Verdict early = Decide(Timer(90_000, late: false));
        Assert.IsType<Holds>(early);
        Fails comes = Assert.IsType<Fails>(Decide(Timer(90_000, late: true)));
        Assert.Equal(90_001, comes.Trace.Scans);
        Assert.InRange(comes.Trace.Segments.Length, 1, 3);
    }

    [Fact]
    public void Doubling_a_limit_does_not_double_the_effort()
    {
        long single = Decide(Timer(45_000, late: false)).Effort.Conflicts;
        long twice = Decide(Timer(90_000, late: false)).Effort.Conflicts;
        Assert.True(twice <= single + (single / 2) + 20, $"{single} conflicts became {twice}");
    }

    /// <summary>
    /// A clock runs while a step is active; its alarm comes when it has reached the limit. A monitor counts
    /// by itself how long the step has been active.
    /// </summary>
    private static TransitionSystem Timer(int limit, bool late)
    {
        Sketch sketch = new();
        Expression demand = sketch.Input("demand");
        Expression clock = sketch.State("clock", 0, limit, 0);
        Expression monitor = sketch.State("monitor", 0, limit + 100, 0);
        sketch.Clock(clock, demand);
        sketch.Clock(monitor, demand);
        Expression alarm = sketch.AtLeast(clock, limit);
        sketch.Require("alarm", late ? sketch.Not(alarm) : sketch.Builder.Implies(alarm, sketch.AtLeast(monitor, limit)));
        return sketch.ToSystem();
    }

    private static Verdict Decide(TransitionSystem system) =>
        Prover.Decide(system, system.Requirements[0], ProofOptions.Default, null, CancellationToken.None);
}
