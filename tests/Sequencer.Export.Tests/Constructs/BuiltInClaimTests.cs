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

    [Theory]
    [InlineData("LT1.calibration.ends")]
    [InlineData("LT1.calibration.idle")]
    public void What_calibration_promises_is_proved(string promise) => Assert.IsType<Holds>(Verdict(
        "calibrate LT1 at most 2 s role Maintenance \"Set by hand\"\ninterlock I1 \"High\" M1 blocked while LT1 > 5.00 m3", promise));

    /// <summary>The tank itself, not its reading: 9.00 m3, the reading's tolerance, and the few scans in which the last good value stands in.</summary>
    [Fact]
    public void That_the_tank_itself_is_not_overfilled_is_proved_and_leans_on_the_interlock()
    {
        const string tank = """
            real TANK "What stands in the tank" 0 .. 11.00 m3 read by LT1 within 0.10 m3, rises at most 6 m3/min while M1
            require H1 "Overflow" never M1 and TANK > 9.20 m3
            require H2 "Overflow" never M1 and TANK > 9.11 m3
            """;
        const string guarded = tank + "\ninterlock I1 \"Full\" M1 blocked unless LT1 <= 9.00 m3";
        Assert.IsType<Holds>(Verdict(guarded, "H1"));
        Assert.IsType<Fails>(Verdict(guarded, "H2"));
        Assert.IsType<Fails>(Verdict(tank, "H1"));
    }

    private static Verdict Verdict(string declarations, string requirement, string procedure = ConstructExport.OneStep)
    {
        DemoExport unit = ConstructExport.Of(declarations, procedure);
        Requirement asked = unit.System.Requirements.Single(each => each.Name == requirement);
        using CancellationTokenSource limit = new(TimeSpan.FromMinutes(2));
        return Prover.Decide(unit.System, asked, ProofOptions.Default, null, limit.Token);
    }
}
