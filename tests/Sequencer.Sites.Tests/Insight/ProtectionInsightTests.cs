using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>Worked out by hand: what each verdict leans on and what fails without it.</summary>
public sealed class ProtectionInsightTests
{
    private const string Program = """
        language 1
        unit U "Bench"

        input S1   switch  at %IX0.0  "Full"
        input S2   switch  at %IX0.1  "Full, second switch"
        input S3   switch  at %IX0.2  "Guard open"
        output M1  motor  at %QX0.0  "Pump 1"  safe stopped
        output M2  motor  at %QX0.1  "Pump 2"  safe stopped
        output M3  motor  at %QX0.2  "Pump 3"  safe stopped

        interlock I1 "Full"          M1      blocked while S1
        interlock I2 "Full, too"     M1      blocked while S1 or S2
        interlock I3 "Second full"   M2      blocked while S2
        interlock I4 "Apart"         M2, M3  exclusive
        interlock I5 "Nobody needs"  M3      blocked while S1

        trip T1 "Guard" when S3 then emergency

        require H1 "Two barriers"  never M1 and S1
        require H2 "One barrier"   never M2 and S2
        require H3 "Apart"         never M2 and M3
        require H4 "Guard"         after S3 not (M1 or M2 or M3) within 0 scans
        require H5 "A second one"  never M1 and S2

        procedure
          step 10 "Run"
            run M1
            run M2
            limit 1 h then hold "Slow"
            go finish when S1
        """;

    private static readonly InsightBench Bench = new(Program);

    private static readonly ImmutableArray<LeansOn> Leaning =
        [.. Leanings.Of(Bench.Site, Bench.System, Bench.Verdicts, Bench.Questions).Select(one => one.Found).OfType<LeansOn>()];

    private static readonly ImmutableArray<Removal> Removed = Removals.Of(Bench.Site, Leaning, Bench.Questions);

    [Theory]
    [InlineData("H2", "I3")]
    [InlineData("H3", "I4")]
    [InlineData("H4", "T1")]
    [InlineData("H5", "I2")]
    public void A_verdict_leans_on_the_protection_that_it_needs_and_no_other(string requirement, string protection) =>
        Assert.Equal([protection], Of(requirement));

    /// <summary>Either of the two would do, so one of them is named and not both.</summary>
    [Fact]
    public void Of_two_barriers_that_do_the_same_one_is_leaned_on() => Assert.True(Of("H1") is ["I1"] or ["I2"], string.Join(", ", Of("H1")));

    [Fact]
    public void A_requirement_with_another_barrier_holds_without_the_one_its_proof_leans_on() =>
        Assert.IsType<Holds>(Removed.Single(removal => removal.Requirement.Name == "H1").Verdict);

    [Theory]
    [InlineData("H2")]
    [InlineData("H3")]
    [InlineData("H4")]
    [InlineData("H5")]
    public void Without_its_only_barrier_a_requirement_fails_in_a_run_that_replays(string requirement)
    {
        Removal removal = Removed.Single(one => one.Requirement.Name == requirement);
        Trace trace = Assert.IsType<Fails>(removal.Verdict).Trace;
        Assert.Equal(trace.Scans - 1, TracePlayback.FirstScanWhereFalse(trace, removal.System, removal.Requirement.Holds));

        // With the protection in place the same run is harmless.
        Requirement whole = Bench.System.Requirements.Single(one => one.Name == requirement);
        Assert.Null(TracePlayback.FirstScanWhereFalse(trace, Bench.System, whole.Holds));
    }

    [Fact]
    public void A_protection_that_no_requirement_needs_is_leaned_on_by_none() =>
        Assert.DoesNotContain(Leaning, one => one.Protections.Any(protection => protection.Name == "I5"));

    private static string[] Of(string requirement) =>
        [.. Leaning.Single(one => one.Requirement.Name == requirement).Protections.Select(protection => protection.Name)];
}
