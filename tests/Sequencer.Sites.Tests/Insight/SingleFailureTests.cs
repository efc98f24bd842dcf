using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>Which failures defeat which requirement of a made-up unit, worked out by hand.</summary>
public sealed class SingleFailureTests
{
    private const string Program = """
        language 1
        unit U "Bench"

        input LT1   0 .. 10.00 m3  at %IW0    "Level"          bad after 0.2 s
        input S1    switch         at %IX0.0  "Too full"
        input ZSO1  switch         at %IX0.1  "Inlet open"
        output XV1  valve  at %QX0.0  "Inlet"   safe closed  confirm ZSO1 within 2 s
        output P1   motor  at %QX0.1  "Outlet"  safe stopped
        output P2   motor  at %QX0.2  "Other"   safe stopped

        interlock I1 "Level"   XV1  blocked from LT1 > 8.00 m3 until LT1 < 7.00 m3
        interlock I2 "Full"    XV1  blocked while S1
        interlock I3 "Inlet"   P1   blocked while ZSO1
        interlock I4 "Inlet"   P1   blocked while XV1
        interlock I5 "Inlet"   P2   blocked while XV1

        require H1 "Overfill"           never XV1 and LT1 > 8.00 m3
        require H2 "Overfill, switch"   never XV1 and S1
        require H3 "Straight through"   never XV1 and P1
        require H4 "By command alone"   never XV1 and P2

        procedure
          step 10 "Fill"
            open XV1
            limit 1 h then hold "Slow"
            go 20 when LT1 > 7.50 m3
          step 20 "Empty"
            run P1
            run P2
            limit 1 h then hold "Slow"
            go finish when LT1 < 1.00 m3
        """;

    private const string TankProgram = """
        language 1
        unit U "Bench"

        input LT1   0 .. 1.00 m3  at %IW0    "Level"
        output XV1  valve  at %QX0.0  "Inlet"   safe closed
        output P1   motor  at %QX0.1  "Outlet"  safe stopped
        interlock I1 "Level"  XV1  blocked unless LT1 < 0.70 m3
        real TANK "What stands in the tank" 0 .. 1.20 m3 read by LT1 within 0.05 m3, rises at most 6 m3/min while XV1

        require H1 "Overfill"  never XV1 and TANK > 0.80 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 1 h then hold "Slow"
            go 20 when LT1 > 0.60 m3
          step 20 "Empty"
            run P1
            limit 1 h then hold "Slow"
            go finish when LT1 < 0.10 m3
        """;

    private static readonly Lazy<ImmutableArray<SingleFailure>> Real = new(() =>
    {
        InsightBench bench = new(TankProgram);
        return SingleFailures.Of(bench.Site, [.. bench.Verdicts.OfType<Holds>()], bench.Questions);
    });

    private static readonly InsightBench Bench = new(Program);

    private static readonly ImmutableArray<SingleFailure> All = SingleFailures.Of(Bench.Site, [.. Bench.Verdicts.OfType<Holds>()], Bench.Questions);

    [Theory]
    [InlineData("H1", "LT1", FailureMode.StuckLow, true)]
    [InlineData("H1", "LT1", FailureMode.StuckHigh, false)]
    [InlineData("H1", "LT1", FailureMode.Frozen, true)]
    [InlineData("H1", "XV1", FailureMode.StaysOn, true)]
    [InlineData("H1", "XV1", FailureMode.StaysOff, false)]
    [InlineData("H2", "S1", FailureMode.StuckOff, true)]
    [InlineData("H2", "S1", FailureMode.StuckOn, false)]
    [InlineData("H3", "XV1", FailureMode.StaysOn, false)] // its switch shows that it is open, and I3 looks at the switch
    [InlineData("H3", "P1", FailureMode.StaysOn, true)]
    [InlineData("H4", "XV1", FailureMode.StaysOn, true)] // I5 looks at the command
    public void A_failure_defeats_what_has_no_second_barrier(string requirement, string tag, FailureMode mode, bool defeats)
    {
        Verdict verdict = All.Single(one => one.Requirement.Name == requirement && one.Failure == new Failure(tag, mode)).Verdict;
        Assert.IsType(defeats ? typeof(Fails) : typeof(Holds), verdict);
    }

    /// <summary>
    /// A tank with what truly stands in it: a level that sticks low, and an inlet that stays open or a pump that does not stop, fill
    /// it above what is allowed; an inlet that stays closed does not. The level rises for no other reason.
    /// </summary>
    [Theory]
    [InlineData("LT1", FailureMode.StuckLow, true)]
    [InlineData("LT1", FailureMode.StuckHigh, false)]
    [InlineData("XV1", FailureMode.StaysOn, true)]
    [InlineData("XV1", FailureMode.StaysOff, false)]
    [InlineData("P1", FailureMode.StaysOn, false)]
    public void What_is_real_follows_the_device_and_not_its_command(string tag, FailureMode mode, bool defeats)
    {
        Verdict verdict = Real.Value.Single(one => one.Failure == new Failure(tag, mode) || (one.Failure.Tag == tag && one.Failure.Mode == FailureMode.Stuck)).Verdict;
        Assert.IsType(defeats ? typeof(Fails) : typeof(Holds), verdict);
    }

    [Fact]
    public void What_a_requirement_does_not_speak_of_is_not_asked() =>
        Assert.DoesNotContain(All, one => one.Requirement.Name == "H2" && one.Failure.Tag == "LT1");

    [Fact]
    public void Every_run_breaks_its_requirement_in_its_last_scan()
    {
        foreach (SingleFailure one in All.Where(one => one.Verdict is Fails))
        {
            Trace run = ((Fails)one.Verdict).Trace;
            Assert.Equal(run.Scans - 1, TracePlayback.FirstScanWhereFalse(run, one.System, one.Requirement.Holds));
        }
    }
}
