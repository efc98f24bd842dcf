using System.Collections.Immutable;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Tests.Recipes;
using Sequencer.Sites.Trials;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>What counts as unsafe is found in real runs of a site with a fault, and told.</summary>
public sealed class TrialOutcomeTests : IDisposable
{
    private readonly SiteWithFiles _files = new SiteWithFiles("one-pit").With(TrialSite.Files);
    private readonly LoadedSite _site;
    private readonly TrialSet _set;
    private readonly Dictionary<int, RunSummary> _played = [];
    private readonly TrialExecution _execution;
    private readonly ImmutableArray<FaultWindows> _windows;

    public TrialOutcomeTests()
    {
        _site = TrialSite.Load(_files);
        SiteTrials trials = TrialSite.TrialsOf(_site);
        _execution = new TrialExecution(_site, trials, new Progress<StageProgress>());
        ScenarioResult result = _execution.Base(0, CancellationToken.None);
        _windows = [new FaultWindows(_site.Plant, result.Record)];
        TrialSettings settings = new() { Faults = TrialFaults.Each };
        _set = new TrialSet(_site, trials, settings, new TrialPlan(trials, settings, _windows), [], [result], [_execution.BaseSummary(0, CancellationToken.None)]);
    }

    public void Dispose() => _files.Dispose();

    [Fact]
    public void A_dosing_pump_that_keeps_running_gives_more_than_the_program_allows()
    {
        FaultRow row = Row("P304.keeps-running", out RunSummary run);
        Assert.Equal(UnsafeEnd.DoseLimitPassed, row.Unsafe);
        Assert.Equal("P304", run.Overdosed?.Output);
        Assert.Contains("TK301 held after", row.Controller, StringComparison.Ordinal);
        Assert.Contains("P304 gave", row.Ended, StringComparison.Ordinal);
        Assert.Contains("of CAUSTIC", row.Lost, StringComparison.Ordinal);
    }

    [Fact]
    public void An_inlet_that_stays_open_makes_the_pit_run_over()
    {
        FaultRow row = Row("XV300.stuck-open", out RunSummary run);
        Assert.True(row.Unsafe.HasFlag(UnsafeEnd.Overflow), row.Ended);
        Assert.True(run.OverflowedInAll > 100);
        Assert.Contains("TK301 ran over", row.Ended, StringComparison.Ordinal);
        Assert.EndsWith("over rims", row.Lost, StringComparison.Ordinal);
    }

    [Fact]
    public void What_leaks_is_told_as_lost()
    {
        FaultRow row = Row("TK301.leaks", out RunSummary run);
        Assert.True(run.Leaked > 1.0);
        Assert.Contains("L leaked", row.Lost, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_at_once_seen_and_held_is_safe()
    {
        FaultRow row = Row("AG301.fails-to-start", out RunSummary run);
        Assert.Equal(UnsafeEnd.None, row.Unsafe);
        Assert.Equal(RunEndKind.AtRest, run.End);
        Assert.InRange(run.RestSeconds, _set.Plan.Draw(Number("AG301.fails-to-start")).Faults[0].Seconds, run.Seconds);
        Assert.Equal("the batch is not finished", row.Lost);
    }

    [Fact]
    public void Each_kind_is_told_and_the_worst_comes_first()
    {
        TrialMeasures measures = new([new TrialValue("sewer.pH_lowest", "lowest pH", "pH", TakenAs.AtEnd)], ["TK1.overflowed"], ["TK1.leaked"], [], 3600);
        ImmutableArray<DischargeLimit> limits = [new DischargeLimit("sewer.pH_lowest", "lowest pH", 6, null)];
        RunSummary good = RunSummary.NotPlayable(measures) with { End = RunEndKind.Came, Values = [6] };
        Assert.Equal(UnsafeEnd.None, UnsafeEnds.Of(good, measures, limits));
        Assert.Equal(UnsafeEnd.None, UnsafeEnds.Of(good with { Leaked = 5 }, measures, limits));
        (RunSummary Run, UnsafeEnd Kind, string Words)[] bad =
        [
            (good with { Broken = new Happening("H1", 61) }, UnsafeEnd.RequirementBroken, "requirement H1 broken at 0:01:01"),
            (good with { Overdosed = new Overdose("P1", 0.5) }, UnsafeEnd.DoseLimitPassed, "P1 gave 500 mL beyond its limit"),
            (good with { Values = [5.999] }, UnsafeEnd.OutsideConsent, "lowest pH 5.999 pH"),
            (good with { Overflowed = [12], Leaked = 5 }, UnsafeEnd.Overflow, "TK1 ran over, 12 L"),
            (good with { End = RunEndKind.TimeOver, Asking = "T1.Q1" }, UnsafeEnd.NoEnd, "no end; T1.Q1 is not answered"),
            (good with { End = RunEndKind.ModelStopped, Failure = "TK1: balance of volume: gone (at 7.0 s)" }, UnsafeEnd.ModelStopped, "the plant model stopped, what came of it is not known: TK1: balance of volume: gone (at 7.0 s)"),
            (good with { End = RunEndKind.NotPlayable }, UnsafeEnd.NotPlayable, "could not be played: the plant cannot have these values together"),
        ];
        Assert.Equal(bad.Select(one => (one.Kind, one.Words)), bad.Select(one => (UnsafeEnds.Of(one.Run, measures, limits), UnsafeEnds.Words(one.Run, measures, limits))));
        Assert.Equal(bad.Select(one => one.Kind), bad.Reverse().Select(one => one.Kind).OrderBy(UnsafeEnds.Order));
        Assert.True(UnsafeEnds.Order(UnsafeEnd.None) > UnsafeEnds.Order(UnsafeEnd.NotPlayable));
        Assert.Equal(UnsafeEnd.None, UnsafeEnds.Of(good with { End = RunEndKind.TimeOver, IsAtRest = true }, measures, limits));
    }

    /// <summary>Saved runs are for people: their times are whole scans, and played again they are the same runs.</summary>
    [Theory]
    [InlineData("XV300.stuck-open")]
    [InlineData("P304.keeps-running")]
    public void A_worst_run_reads_well_and_is_the_same_run_again(string fault)
    {
        Row(fault, out RunSummary run);
        RunSummary[] runs = [.. _set.Trials.Faults.Select(_ => RunSummary.NotPlayable(_set.Trials.Measures))];
        runs[Number(fault) - 1] = run;
        WorstRun worst = Assert.Single(WorstRun.Of(_set with { Runs = [.. runs] }));
        Assert.DoesNotMatch(@"\d\.\d{4,} s\b", worst.Text);
        DiagnosticBag diagnostics = new();
        Scenario scenario = ScenarioReader.Read(new SourceText(worst.File, worst.Text), diagnostics) ?? throw new InvalidOperationException(worst.Text);
        ScenarioResult again = SimulationStage.Play(_site, scenario, diagnostics, new Progress<StageProgress>(), CancellationToken.None)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        Assert.Equal(run.Seconds, again.Record.Seconds, 1e-6);
        Assert.True(again.Passed, worst.Text);
    }

    private int Number(string fault) => _set.Trials.Faults.IndexOf(fault) + 1;

    private FaultRow Row(string fault, out RunSummary run)
    {
        int number = Number(fault);
        Assert.True(number > 0, $"no fault {fault}");
        _execution.Play(_set.Plan, _windows, [number], 1, (played, summary) => _played[played] = summary, CancellationToken.None);
        run = _played[number];
        return FaultRow.Of(_set, _set.Plan.Draw(number), run);
    }
}
