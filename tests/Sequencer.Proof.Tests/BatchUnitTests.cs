using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Tests.Systems;

namespace Sequencer.Proof.Tests;

public sealed class BatchUnitTests
{
    private static readonly string[] s_failing = ["complete", "third step overdue"];
    private static readonly string[] s_leftOut = ["A dosed by pulses alone"];

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    public void Every_requirement_of_a_batch_unit_is_decided_as_it_was_built(int steps)
    {
        foreach (Requirement requirement in Requirements(steps, 1, out TransitionSystem system))
        {
            Verdict verdict = Prover.Decide(system, requirement, ProofOptions.Default, null, CancellationToken.None);
            if (s_failing.Contains(requirement.Name))
            {
                Fails fails = Assert.IsType<Fails>(verdict, false);
                Assert.Equal(fails.Trace.Scans - 1, TracePlayback.FirstScanWhereFalse(fails.Trace, system, requirement.Holds));
                Assert.InRange(fails.Trace.Segments.Length, 1, 12);
            }
            else
            {
                Holds holds = Assert.IsType<Holds>(verdict, false);
                Assert.All(ExpressionGraph.Variables([holds.Invariant]), variable => Assert.Same(system.States[variable.Index].Variable, variable));
                Assert.NotNull(InvariantCheck.Confirm(Only(system, requirement), holds.Invariant, new Budget(long.MaxValue, CancellationToken.None)));
            }
        }
    }

    [Fact]
    public void Times_ten_times_as_long_do_not_take_twice_the_effort()
    {
        foreach (Requirement requirement in Requirements(3, 1, out TransitionSystem system).Where(requirement => !s_failing.Contains(requirement.Name)))
        {
            Requirement slow = Requirements(3, 10, out TransitionSystem slowSystem).Single(other => other.Name == requirement.Name);
            Effort effort = Prover.Decide(system, requirement, ProofOptions.Default, null, CancellationToken.None).Effort;
            Effort slowEffort = Prover.Decide(slowSystem, slow, ProofOptions.Default, null, CancellationToken.None).Effort;
            Assert.True(slowEffort.Queries <= (2 * effort.Queries) + 100, $"{requirement.Name}: {effort} became {slowEffort}");
        }
    }

    [Fact]
    public void Several_at_a_time_give_the_same_verdicts_in_order_as_one_at_a_time()
    {
        TransitionSystem system = BatchUnit.Create(2, 1);
        using CancellationTokenSource never = new();
        ProofOptions options = ProofOptions.Default with { Conflicts = 3_000 };
        ImmutableArray<Verdict> one = Prover.DecideAll(system, options, 1, null, never.Token);
        ImmutableArray<Verdict> three = Prover.DecideAll(system, options, 3, null, never.Token);
        Assert.Equal(system.Requirements.Select(requirement => requirement.Name), one.Select(verdict => verdict.Requirement));
        Assert.Equal(one.Select(verdict => verdict.Effort), three.Select(verdict => verdict.Effort));
        Assert.Equal(one.Select(verdict => verdict.GetType()), three.Select(verdict => verdict.GetType()));
    }

    private static IEnumerable<Requirement> Requirements(int steps, int scale, out TransitionSystem system)
    {
        system = BatchUnit.Create(steps, scale);
        return system.Requirements.Where(requirement => !s_leftOut.Contains(requirement.Name));
    }

    private static TransitionSystem Only(TransitionSystem system, Requirement requirement) => TransitionSystem.Create(
        system.Name, system.ScanMilliseconds, system.Inputs, system.States, [], [], system.Assumptions, [requirement], []);
}
