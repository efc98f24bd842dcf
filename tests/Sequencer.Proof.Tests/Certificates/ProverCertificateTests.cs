using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Certificates;

/// <summary>What the prover finds is believed because solvers that know nothing of it agree.</summary>
public sealed class ProverCertificateTests
{
    private static readonly string[] Discharged = ["unsat", "unsat", "unsat"];

    public static TheoryData<string> Names => [.. CertifiedCases.ByName.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_verdict_on_a_small_program_is_discharged_by_both_solvers(string name)
    {
        TransitionSystem system = CertifiedCases.ByName[name]().System;
        string text = Assert.IsType<string>(CertificateOf(system, system.Requirements[0]));
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => Assert.Equal(Discharged, solver.Answers(text)));
    }

    [Fact]
    public void Verdicts_on_random_systems_are_discharged()
    {
        int certificates = 0;
        for (int seed = 0; seed < 40; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed, 6);
            foreach (string text in system.Requirements.Select(requirement => CertificateOf(system, requirement)).OfType<string>())
            {
                certificates++;
                Assert.True(Discharged.SequenceEqual(SmtSolver.Z3.Answers(text)), $"seed {seed}\n{text}");
            }
        }

        Assert.True(certificates >= 10, $"only {certificates} requirements hold");
    }

    /// <summary>The certificate of a verdict that holds, checked against the system; null for another verdict.</summary>
    private static string? CertificateOf(TransitionSystem system, Requirement requirement)
    {
        if (Prover.Decide(system, requirement, new ProofOptions(), null, CancellationToken.None) is not Holds holds)
        {
            return null;
        }

        string text = CertificateWriter.Write(
            system, requirement, holds.Invariant, [.. system.Assumptions.Where(assumption => holds.Assumptions.Contains(assumption.Name))]);
        Assert.Equal(string.Empty, CertificateChecker.Check(system, requirement, text).Reason);
        return text;
    }
}
