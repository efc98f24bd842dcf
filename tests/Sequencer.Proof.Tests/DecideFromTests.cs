using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Tests.Certificates;

namespace Sequencer.Proof.Tests;

/// <summary>Two counters of one input side by side, of which the second goes back to 0 at a count of its own.</summary>
public sealed class DecideFromTests
{
    private const int Most = 9;

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_guess_that_needs_another_fact_is_proved_with_it(bool aided)
    {
        Verdict verdict = Decide(resetAt: 12, aided);
        Holds holds = Assert.IsType<Holds>(verdict);
        Assert.NotEqual("first = second", $"{holds.Invariant}");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_guess_that_a_run_breaks_is_shown_broken_where_it_can_be_seen(bool aided)
    {
        Fails fails = Assert.IsType<Fails>(Decide(resetAt: 7, aided));

        // Seven scans up to the count, one that goes back; it is seen in the scan after it.
        Assert.Equal(9, fails.Trace.Scans);
    }

    [Fact]
    public void A_break_that_is_seen_only_later_is_gone_on_from()
    {
        // What the guess speaks of is not what is required: that shows once the first count is at its most.
        Fails fails = Assert.IsType<Fails>(Decide(resetAt: 7, aided: false, onlyAtMost: true));
        Assert.True(fails.Trace.Scans > 9, $"{fails.Trace.Scans} scans");
    }

    private static Verdict Decide(long resetAt, bool aided, bool onlyAtMost = false)
    {
        SystemSketch sketch = new();
        ExpressionBuilder builder = sketch.Builder;
        Expression counts = sketch.Input("counts");
        Expression first = sketch.State("first", 0, 20, 0);
        Expression second = sketch.State("second", 0, 20, 0);
        Expression Next(Expression count) => builder.IfThenElse(counts, builder.Minimum(builder.Add(count, builder.Constant(1)), builder.Constant(Most)), builder.Constant(0));
        Expression back = builder.Equal(second, builder.Constant(resetAt));
        sketch.Next(first, Next(first));
        sketch.Next(second, builder.IfThenElse(back, builder.Constant(0), Next(second)));
        Expression same = builder.Equal(first, second);
        sketch.Require("same", "the counts are the same", onlyAtMost ? builder.Or(same, builder.Less(first, builder.Constant(Most))) : same);
        AlikeScan? alike = aided ? new AlikeScan(builder.Or(builder.Not(back), builder.Equal(Next(second), builder.Constant(0))), builder.Not(back)) : null;
        ImmutableArray<Trace> ways = [];
        return Prover.DecideFrom(sketch.Create("two counts"), [same], builder, () => alike, () => ways, ProofOptions.Default, CancellationToken.None);
    }
}
