using Sequencer.Control.Traces;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Traces;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Traces;

/// <summary>A failing run breaks the same requirement in the same scan in the simulator and in the exported text.</summary>
public sealed class TraceRunsElsewhereTests
{
    /// <summary>Broken programs: the site, its file, what is changed, and the requirement that fails then.</summary>
    public static TheoryData<string, string, string, string, string> Broken => new()
    {
        { "one-pit", "pit.seq", "blocked unless YS301 and AT301 usable", "blocked unless AT301 usable", "H2" },
        { "one-pit", "pit.seq", "blocked unless YS301 and AT301 usable", "blocked unless YS301", "H3" },
        { "one-pit", "pit.seq", "blocked from LSHH301 until not LSHH301 and reset", "blocked while TT301 > 50.0 degC", "H4" },
        { "one-pit", "pit.seq", "blocked unless RELEASED and ZSC300", "blocked unless ZSC300", "H6" },
        { "fernhollow", "services.seq", "blocked unless TK301.ZSO311A or TK302.ZSO312A", "blocked unless TK301.YS301 or TK302.YS302", "SV300.H2" },
        { "fernhollow", "services.seq", "blocked while (TK301.ZSO311A and TK302.ZSO312A) or (not TK301.ZSC311A and not TK302.ZSC312A)", "blocked while not TK301.ZSC311A and not TK302.ZSC312A", "SV300.H3" },
        { "fernhollow", "services.seq", "blocked unless TK301.ZSO311B or TK302.ZSO312B", "blocked unless TK301.YS301 or TK302.YS302", "SV300.H4" },
        { "fernhollow", "services.seq", "blocked while (TK301.ZSO311B and TK302.ZSO312B) or (not TK301.ZSC311B and not TK302.ZSC312B)", "blocked while not TK301.ZSC311B and not TK302.ZSC312B", "SV300.H5" },
        { "fernhollow", "line.seq", "blocked while (TK301.ZSO321 and TK302.ZSO322) or (not TK301.ZSC321 and not TK302.ZSC322)", "blocked while not TK301.ZSC321 and not TK302.ZSC322", "LN320.H2" },
        { "fernhollow", "line.seq", "blocked unless TK301.ZSO321 or TK302.ZSO322", "blocked unless TK301.ZSO321 or TK302.YS302", "LN320.H1" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void The_run_breaks_the_requirement_in_the_simulator_and_in_the_text(string name, string file, string before, string after, string requirement)
    {
        LoadedSite site = BrokenPit.Load(name, file, before, after);
        Judge(site, BrokenPit.Run(site, requirement));
    }

    [Fact]
    public void A_run_through_all_steps_does_so_too()
    {
        (LoadedSite site, FailingRun run) = BrokenPit.HotDischarge();
        Assert.Equal(3455, run.Trace.Scans);
        Judge(site, run);
    }

    [Fact]
    public void The_scenario_is_not_as_expected_once_the_fault_is_mended()
    {
        LoadedSite broken = BrokenPit.Load("one-pit", "pit.seq", "blocked unless YS301 and AT301 usable", "blocked unless AT301 usable");
        LoadedSite mended = BrokenPit.Load("one-pit", "pit.seq", "language 1", "language 1");
        ScenarioResult result = Simulated(mended, BrokenPit.Run(broken, "H2"));
        Assert.False(result.Passed);
        Assert.Equal("never broken", Assert.Single(result.Expectations).Seen);
    }

    [Fact]
    public void A_text_that_does_something_else_is_found_by_the_run()
    {
        LoadedSite broken = BrokenPit.Load("one-pit", "pit.seq", "blocked unless YS301 and AT301 usable", "blocked unless AT301 usable");
        LoadedSite mended = BrokenPit.Load("one-pit", "pit.seq", "language 1", "language 1");
        FailingRun run = BrokenPit.Run(broken, "H2");
        ReadBackResult text = ReadBack.Replay(broken.System, ExportStage.Write(mended, TextDialect.Default), run.Trace, CancellationToken.None);
        Assert.False(text.Agrees);
        Assert.Equal(run.Trace.Scans, text.Difference?.Scan);
    }

    [Fact]
    public void A_scenario_made_of_the_run_gives_the_text_the_inputs_of_the_run()
    {
        (LoadedSite site, FailingRun run) = BrokenPit.HotDischarge();
        Trace inputs = RecordedInputs.Of(site, Written(run), CancellationToken.None) ?? throw new InvalidOperationException("the scenario does not fit");
        Assert.Equal(ScanByScan(run.Trace), ScanByScan(inputs).Take((int)run.Trace.Scans));

        ReadBackResult text = ReadBack.Run(site.System, ExportStage.Write(site, TextDialect.Default), 1, 1, CancellationToken.None);
        Assert.Null(ReadBack.Replay(site.System, ExportStage.Write(site, TextDialect.Default), text.Systems, inputs, CancellationToken.None));
    }

    private static IEnumerable<string> ScanByScan(Trace trace) =>
        trace.Segments.SelectMany(segment => Enumerable.Repeat(string.Join(' ', segment.Inputs), segment.Scans));

    private static Scenario Written(FailingRun run)
    {
        DiagnosticBag diagnostics = new();
        return ScenarioReader.Read(new SourceText("trace.yaml", TraceScenario.Write(run.Story) ?? throw new InvalidOperationException("too long for a scenario")), diagnostics)
            ?? throw new InvalidOperationException(string.Join('\n', diagnostics.InOrder().Select(one => one.Message)));
    }

    private static ScenarioResult Simulated(LoadedSite site, FailingRun run)
    {
        DiagnosticBag diagnostics = new();
        ScenarioResult? result = new ScenarioPlayer(site.System, site.Metadata, site.Plant).Play(Written(run), diagnostics, null, CancellationToken.None);
        return result ?? throw new InvalidOperationException(string.Join('\n', diagnostics.InOrder().Select(one => one.Message)));
    }

    private static void Judge(LoadedSite site, FailingRun run)
    {
        ScenarioResult simulated = Simulated(site, run);
        Assert.True(simulated.Passed, Assert.Single(simulated.Expectations).Seen);
        Assert.Equal(run.Trace.Scans - 1, simulated.Expectations[0].Scan);

        StructuredTextExport export = ExportStage.Write(site, TextDialect.Default);
        ReadBackResult text = ReadBack.Replay(site.System, export, run.Trace, CancellationToken.None);
        Assert.True(text.Agrees, text.Difference?.ToString());
        Assert.Equal(run.Trace.Scans, text.Scans);
    }
}
