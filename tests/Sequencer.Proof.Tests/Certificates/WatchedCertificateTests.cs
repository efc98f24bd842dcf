using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>
/// In a system with a watch over memory certificates leave it out, and that of the watch shows that they may. Both are discharged by
/// an outside solver.
/// </summary>
public sealed class WatchedCertificateTests
{
    private static readonly string[] Discharged = ["unsat", "unsat", "unsat"];

    [Fact]
    public void Both_certificates_of_a_watched_interlock_are_discharged()
    {
        TransitionSystem system = Interlock();
        foreach (Requirement requirement in system.Requirements)
        {
            string text = Certified(system, requirement);
            Assert.Equal(Discharged, SmtSolver.Z3.Answers(text));
            Assert.Equal(requirement.Name == WatchedSystem.Memory, text.Contains("|pump.copy|", StringComparison.Ordinal));
            Assert.Equal(requirement.Name != WatchedSystem.Memory, text.Contains("is one variable here", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_certificate_of_a_watch_that_keeps_its_copy_otherwise_is_refused()
    {
        TransitionSystem system = Interlock();
        Requirement memory = system.Requirements.Single(requirement => requirement.Name == WatchedSystem.Memory);
        string text = Certified(system, memory);
        StateVariable copy = system.States.First(state => state.Purpose == StatePurpose.Watch);
        ExpressionBuilder build = new();
        Expression other = build.Substitute([copy.Next], new Dictionary<Variable, Expression>())[0];
        TransitionSystem wrong = TransitionSystem.Create(
            system.Name, system.ScanMilliseconds, system.Inputs, system.States.SetItem(copy.Variable.Index, copy with { Next = build.Not(other) }), [], [], [], system.Requirements, []);
        Assert.False(CertificateChecker.Check(wrong, memory, text).IsAccepted);
        Assert.IsType<Fails>(Prover.Decide(wrong, memory, ProofOptions.Default, null, CancellationToken.None));
    }

    [Fact]
    public void A_watch_changes_no_verdict_of_random_systems()
    {
        int decided = 0;
        for (int seed = 0; seed < 60; seed++)
        {
            ExpressionBuilder build = new();
            TransitionSystem plain = RandomSystem.Create(seed, builder: build);
            TransitionSystem watched = WatchedSystem.Of(plain, build, 2);
            foreach (Requirement requirement in plain.Requirements)
            {
                Verdict without = Prover.Decide(plain, requirement, ProofOptions.Default, null, CancellationToken.None);
                Verdict with = Prover.Decide(watched, requirement, ProofOptions.Default, null, CancellationToken.None);
                Assert.Equal(without.GetType(), with.GetType());
                decided += with is Undecided ? 0 : 1;
                if (with is Holds holds)
                {
                    Assert.Equal(string.Empty, CertificateChecker.Check(watched, requirement, CertificateWriter.Write(watched, requirement, holds.Invariant)).Reason);
                }
            }
        }

        Assert.InRange(decided, 30, 1000);
    }

    private static string Certified(TransitionSystem system, Requirement requirement)
    {
        Holds holds = Assert.IsType<Holds>(Prover.Decide(system, requirement, ProofOptions.Default, null, CancellationToken.None));
        string text = CertificateWriter.Write(system, requirement, holds.Invariant);
        Assert.Equal(string.Empty, CertificateChecker.Check(system, requirement, text).Reason);
        return text;
    }

    /// <summary>A pump that follows a button and never runs with the door open.</summary>
    private static TransitionSystem Interlock()
    {
        Sketch sketch = new();
        Expression pump = sketch.State("pump");
        Expression door = sketch.State("door", initial: true);
        Expression opens = sketch.Input("opens");
        sketch.Next(pump, sketch.And(sketch.Input("button"), sketch.Not(opens)));
        sketch.Next(door, opens);
        sketch.Never("apart", pump, door);
        return WatchedSystem.Of(sketch.ToSystem(), sketch.Builder, 1);
    }
}
