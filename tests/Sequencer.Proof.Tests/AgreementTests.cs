using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.DecisionDiagrams;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Tests.ExplicitState;
using Sequencer.Proof.Tests.Systems;

namespace Sequencer.Proof.Tests;

public sealed class AgreementTests
{
    [Fact]
    public void The_prover_and_a_visit_of_every_state_agree_on_hundreds_of_systems()
    {
        int holds = 0;
        int long_failures = 0;
        for (int seed = 0; seed < 300; seed++)
        {
            TransitionSystem system = SmallRandomSystem.Create(seed);
            int? shortest = new ExplicitSearch(system).ShortestFailure();
            Verdict verdict = Prover.Decide(system, system.Requirements[0], ProofOptions.Default with { BoundedDepth = 3 }, null, CancellationToken.None);
            string seen = $"seed {seed}: {shortest} against {verdict}";
            if (shortest is null)
            {
                Assert.True(verdict is Holds, seen);
                holds++;
            }
            else
            {
                Fails fails = Assert.IsType<Fails>(verdict, false);
                Assert.True(shortest <= 3 ? fails.IsShortest && fails.Trace.Scans == shortest : fails.Trace.Scans >= shortest, seen);
                long_failures += shortest > 3 ? 1 : 0;
            }
        }

        Assert.True(holds >= 60 && long_failures >= 15, $"{holds} hold, {long_failures} fail late");
    }

    /// <summary>Decision diagrams by themselves always find a shortest run, and reach as many states as a visit of each.</summary>
    [Fact]
    public void Decision_diagrams_alone_and_a_visit_of_every_state_agree_on_hundreds_of_systems()
    {
        ProofOptions diagrams = ProofOptions.Default with { Engines = Engines.Diagrams };
        int holds = 0;
        for (int seed = 0; seed < 300; seed++)
        {
            TransitionSystem system = SmallRandomSystem.Create(seed);
            ExplicitSearch search = new(system);
            int? shortest = search.ShortestFailure();
            Verdict verdict = Prover.Decide(system, system.Requirements[0], diagrams, null, CancellationToken.None);
            if (shortest is null)
            {
                Assert.True(verdict is Holds, $"seed {seed}: {verdict}");
                Assert.Equal(search.Reached, RingSearch.ReachedStates(system, new DiagramBudget(ProofOptions.Default, new Budget(1, CancellationToken.None))));
                holds++;
            }
            else
            {
                Fails fails = Assert.IsType<Fails>(verdict, false);
                Assert.True(fails.IsShortest && fails.Trace.Scans == shortest, $"seed {seed}: {fails.Trace.Scans} instead of {shortest}");
            }
        }

        Assert.InRange(holds, 60, 200);
    }
}
