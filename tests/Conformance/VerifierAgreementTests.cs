using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Testing.Verifiers;
using Xunit.Abstractions;

namespace Sequencer.Conformance.Tests;

/// <summary>Verifiers that are not ours say of small systems what each of our engines says of them, whether the requirement holds or fails.</summary>
public sealed class VerifierAgreementTests(ITestOutputHelper report)
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(5);

    public static TheoryData<string, bool> Cases
    {
        get
        {
            TheoryData<string, bool> data = [];
            foreach (string family in (string[])["header", "chain", "timers", "faults"])
            {
                data.Add(family, false);
                data.Add(family, true);
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Spin_and_z3_say_what_each_of_our_engines_says(string family, bool broken)
    {
        TransitionSystem system = family switch
        {
            "header" => ScalingFamilies.Header(3, broken),
            "chain" => ScalingFamilies.Chain(8, broken),
            "timers" => ScalingFamilies.Timers(2, broken, 7),
            _ => ScalingFamilies.Faults(4, broken),
        };
        foreach (Engines engines in (Engines[])[Engines.All, Engines.Learning, Engines.Diagrams])
        {
            Verdict verdict = Prover.Decide(system, system.Requirements[0], ProofOptions.Default with { Engines = engines }, null, CancellationToken.None);
            Assert.True(broken ? verdict is Fails : verdict is Holds, $"{engines}: {verdict}");
        }

        foreach (OutsideVerifier outside in (OutsideVerifier[])[OutsideVerifier.Spin, OutsideVerifier.Z3])
        {
            OutsideAnswer answer = outside.Ask(system, Limit);
            report.WriteLine(FormattableString.Invariant($"{family}, broken {broken}: {outside} {answer.Seconds:0.00} s"));
            Assert.True(answer.Holds == !broken, $"{outside}: {answer.Words}");
        }
    }
}
