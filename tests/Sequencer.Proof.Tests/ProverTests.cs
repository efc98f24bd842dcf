using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Tests.Systems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests;

public sealed class ProverTests
{
    [Fact]
    public void A_proof_names_exactly_the_assumptions_it_leans_on()
    {
        Sketch sketch = new();
        Expression level = sketch.Input("level", 0, 100);
        Expression other = sketch.Input("other", 0, 100);
        sketch.Assume("A1", sketch.AtMost(level, 50));
        sketch.Assume("A2", sketch.AtMost(other, 50));
        sketch.Assume("A3", sketch.AtMost(sketch.Builder.Add(level, other), 200));
        sketch.Require("H1", sketch.AtMost(level, 60));
        Holds holds = Assert.IsType<Holds>(Decide(sketch.ToSystem()));
        Assert.Equal("A1", Assert.Single(holds.Assumptions));
        Assert.True(holds.Invariant.IsTrue);
    }

    [Fact]
    public void A_trace_keeps_assumptions_about_variables_outside_the_requirements_slice()
    {
        Sketch sketch = new();
        Expression pump = sketch.Input("pump");
        Expression healthy = sketch.Input("healthy");
        Expression ran = sketch.State("ran");
        sketch.Next(ran, sketch.Or(ran, pump));
        sketch.Assume("A1", healthy);
        sketch.Require("H1", sketch.Not(ran));
        Fails fails = Assert.IsType<Fails>(Decide(sketch.ToSystem()));
        Assert.Equal(2, fails.Trace.Scans);
        Assert.All(fails.Trace.Segments, segment => Assert.Equal(1, segment.Inputs[1]));
    }

    [Fact]
    public void Inputs_outside_the_slice_have_the_value_nearest_zero()
    {
        Sketch sketch = new();
        sketch.Input("far", 5, 9);
        sketch.Input("around", -5, 9);
        Expression pump = sketch.Input("pump");
        sketch.Require("H1", sketch.Not(pump));
        Fails fails = Assert.IsType<Fails>(Decide(sketch.ToSystem()));
        Assert.Equal(new long[] { 5, 0, 1 }, Assert.Single(fails.Trace.Segments).Inputs.ToArray());
        Assert.True(fails.IsShortest);
    }

    [Fact]
    public void A_cancelled_proof_is_undecided_and_says_so()
    {
        TransitionSystem system = BatchUnit.Create(2, 1);
        Verdict verdict = Prover.Decide(system, system.Requirements[2], ProofOptions.Default, null, new CancellationToken(true));
        Assert.Equal(UndecidedReason.Cancelled, Assert.IsType<Undecided>(verdict).Reason);
    }

    [Fact]
    public void A_spent_budget_is_undecided_and_says_so()
    {
        TransitionSystem system = BatchUnit.Create(4, 1);
        Verdict verdict = Prover.Decide(system, system.Requirements[2], ProofOptions.Default with { Conflicts = 20 }, null, CancellationToken.None);
        Assert.Equal(UndecidedReason.Budget, Assert.IsType<Undecided>(verdict).Reason);
    }

    [Fact]
    public void A_requirement_that_only_assumptions_without_a_way_on_would_break_holds()
    {
        Sketch sketch = new();
        Expression pump = sketch.Input("pump");
        sketch.Assume("A1", pump);
        sketch.Assume("A2", sketch.Not(pump));
        sketch.Require("H1", sketch.Not(pump));
        Assert.Equal("A2", Assert.Single(Assert.IsType<Holds>(Decide(sketch.ToSystem())).Assumptions));
    }

    private static Verdict Decide(TransitionSystem system) =>
        Prover.Decide(system, system.Requirements[0], ProofOptions.Default, null, CancellationToken.None);
}
