using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Proof;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>What protections owe without being asked is decided by the prover.</summary>
public sealed class BuiltInClaimTests
{
    private const string Guarded = """
        interlock I1 "Block" M1 blocked while S2
        override of I1 at most 30 min role Maintenance "Switch out for repair"
        require H1 "Without a word" never M1 and S2
        require H2 "With it"        never M1 and S2 and not I1 overridden
        """;

    [Fact]
    public void An_override_is_proved_to_end_within_its_time() => Assert.IsType<Holds>(Verdict(Guarded, "I1.override.ends"));

    [Fact]
    public void What_only_an_overridden_interlock_keeps_fails_unless_the_requirement_says_so()
    {
        Assert.IsType<Fails>(Verdict(Guarded, "H1"));
        Assert.IsType<Holds>(Verdict(Guarded, "H2"));
    }

    [Theory]
    [InlineData("P.apart")]
    [InlineData("P.met")]
    public void What_a_pair_promises_is_proved(string promise)
    {
        const string pair = """
            input  Y1  switch  at %IX1.0  "First pump running"
            input  Y2  switch  at %IX1.1  "Second pump running"
            output D1  motor  at %QX1.0  "First pump"   safe stopped  confirm Y1 within 0.3 s else alarm
            output D2  motor  at %QX1.1  "Second pump"  safe stopped  confirm Y2 within 0.3 s else alarm
            interlock I1 "Blocked" D1 blocked while S2
            pair P "Pumps" D1, D2 duty D1, changes over within 1 s
            """;
        const string procedure = """
              step 10 "Only"
                run P
                limit 10 s then hold "Too long"
                go finish when S1
            """;
        Assert.IsType<Holds>(Verdict(pair, promise, procedure));
    }

    private static Verdict Verdict(string declarations, string requirement, string procedure = ConstructExport.OneStep)
    {
        DemoExport unit = ConstructExport.Of(declarations, procedure);
        Requirement asked = unit.System.Requirements.Single(each => each.Name == requirement);
        using CancellationTokenSource limit = new(TimeSpan.FromMinutes(2));
        return Prover.Decide(unit.System, asked, ProofOptions.Default, null, limit.Token);
    }
}
