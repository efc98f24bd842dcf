using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>A tank whose feed pump has a set speed, and a question before it is drained.</summary>
public sealed class ActionScenarioTests
{
    private const string Program = """
        language 1
        unit T1 "Feed tank"

        input  LT1  0 .. 2.000 m3  at %IW0    "Volume"          bad after 2 s
        input  YS1  switch         at %IX0.0  "Pump running"

        output P1   motor  at %QX0.0  "Feed pump"  safe stopped, confirm YS1 within 5 s
        output XV1  valve  at %QX0.1  "Drain"      safe closed
        output SC1  0 .. 100.0 %  at %QW0  "Pump speed"  safe 0.0 %, rate at most 10.0 % in 1 s

        interlock I1 "Full" P1, SC1 blocked from LT1 > 1.500 m3 until LT1 < 1.400 m3

        procedure
          step 10 "Fill"
            run P1
            set SC1 to 50.0 %
            record "Volume after filling" LT1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 1.000 m3

          step 20 "Test"
            prompt Q1 "Is the spot test clear?" answers "clear", "yellow" role Operator, limit 20 min then hold "Nobody answered"
            limit 1 h then hold "Test slow"
            go 30 when Q1 answered "clear"
            go 10 when Q1 answered "yellow", at most 2 times then hold "Still yellow"

          step 30 "Drain"
            open XV1
            record "Volume left" LT1
            limit 1 h then hold "Draining slow"
            go finish when LT1 < 0.100 m3
        """;

    private const string Plant = """
        plant: 1
        name: Feed tank
        ambient: 18 C
        chemistry:
          precipitates: []
        supplies:
          mains: {temperature: 12 C, pH: 7.6, balanced_by: chloride, dissolved: {carbonate: 3.0 mmol/L, calcium: 1.5 mmol/L, sodium: 1.0 mmol/L}}
        tanks:
          TK1:
            area: 1.0 m2
            overflow: 2.0 m3
            heel: 20 L
            starts: {volume: 0.05 m3, water: mains}
            mixing: {dead_time: 2 s, lag: 5 s}
        pumps:
          P1: {starts_in: 2 s, running: YS1, speed_from: SC1}
        valves:
          XV1: {travel: 2 s}
        lines:
          feed: {from: mains, to: TK1, rate: 12 m3/h, through: [P1]}
          drain: {from: TK1, to: sewer, rate: 12 m3/h, through: [XV1]}
        transmitters:
          LT1: {measures: volume, in: TK1, low: 0 m3, high: 2 m3, lag: 1 s}
        """;

    [Fact]
    public void Half_the_speed_moves_half_the_flow_and_the_answer_leads_on()
    {
        (ScenarioResult result, SiteMetadata site) = Play("""
            scenario: 1
            name: clear at once
            lasts: 1 h
            until: {unit: T1, state: Complete}
            actions:
              - {at: 1 s, press: T1.start}
              - {when: {asked: T1.Q1, after: 90 s}, answer: T1.Q1, with: clear}
            expect:
              - {unit: T1, passes: ["10", "20", "30"]}
              - {unit: T1, ends: Complete}
              - {value: SC1, at_most: 50 %, judged: always}
            """);

        Assert.True(result.Passed, BatchReport.Write(result, site));
        StepVisit fill = result.Record.Steps.First(visit => visit.Step == "10");
        double seconds = result.Record.SecondsAt((fill.ToScan ?? 0) - fill.FromScan);
        double atFullSpeed = 0.95 / 12 * 3600;
        Assert.InRange(seconds, 2 * atFullSpeed, (2 * atFullSpeed) + 10);
    }

    [Fact]
    public void The_batch_record_lists_what_was_recorded_and_answered_and_is_closed_by_an_abort()
    {
        (ScenarioResult result, SiteMetadata site) = Play("""
            scenario: 1
            name: yellow, then aborted
            lasts: 1 h
            until: {unit: T1, state: Aborted, after: 5 s}
            actions:
              - {at: 1 s, press: T1.start}
              - {when: {asked: T1.Q1, after: 60 s}, answer: T1.Q1, with: yellow}
              - {when: {asked: T1.Q1, occurrence: 2, after: 30 s}, press: T1.abort}
            expect:
              - {unit: T1, passes: ["10", "20", "10", "20"]}
              - {unit: T1, ends: Aborted}
            """);

        string report = BatchReport.Write(result, site);
        Assert.True(result.Passed, report);
        BatchClosing batch = Assert.Single(result.Record.Batches);
        Assert.NotNull(batch.ToScan);
        Assert.Equal(["10 Volume after filling", "30 Volume left", "T1.Q1 Is the spot test clear? (Operator)"], batch.Entries.Select(entry => $"{entry.Step} {entry.What}"));
        Assert.StartsWith("1.0", batch.Entries[0].Value, StringComparison.Ordinal);
        Assert.Equal(["not recorded", "yellow"], batch.Entries.Skip(1).Select(entry => entry.Value));
        Assert.Contains("| Is the spot test clear? (Operator) | yellow |", report, StringComparison.Ordinal);
    }

    /// <summary>The question is asked three times; the last yellow holds the unit, and so does the limit of 20 min without an answer.</summary>
    [Theory]
    [InlineData("", "Complete", 1, 0)]
    [InlineData(", manner: wrong, wrong_answer: yellow", "Held", 0, 3)]
    [InlineData(", manner: late, late_by: 15 min", "Complete", 1, 0)]
    [InlineData(", manner: late, late_by: 30 min", "Held", 0, 0)]
    [InlineData(", manner: never", "Held", 0, 0)]
    public void An_operator_answers_each_time_in_his_manner(string manner, string ends, int clear, int yellow)
    {
        (ScenarioResult result, SiteMetadata site) = Play($$"""
            scenario: 1
            name: an operator
            lasts: 2 h
            operator:
              - {prompt: T1.Q1, answer: clear, after: 90 s{{manner}}}
            actions:
              - {at: 1 s, press: T1.start}
            expect:
              - {unit: T1, ends: {{ends}}}
            """);

        Assert.True(result.Passed, BatchReport.Write(result, site));
        Assert.Equal(clear, result.Record.Events.Count(happened => happened.Words.StartsWith("operator answers T1.Q1: clear", StringComparison.Ordinal)));
        Assert.Equal(yellow, result.Record.Events.Count(happened => happened.Words == "operator answers T1.Q1: yellow (wrong)"));
    }

    [Fact]
    public void An_answer_that_is_none_is_told_with_those_there_are()
    {
        DiagnosticBag diagnostics = new();
        Scenario scenario = Read("""
            scenario: 1
            name: green
            lasts: 1 h
            actions:
              - {at: 1 s, answer: T1.Q1, with: green}
            expect: []
            """);
        Assert.Null(Site().Player.Play(scenario, diagnostics, null, CancellationToken.None));
        Diagnostic found = Assert.Single(diagnostics.InOrder(), diagnostic => diagnostic.Severity == Severity.Error);
        Assert.Equal("SEQ0610", found.Code);
        Assert.Contains("`yellow`", found.Mend, StringComparison.Ordinal);
    }

    private static (ScenarioResult Result, SiteMetadata Site) Play(string scenario)
    {
        DiagnosticBag diagnostics = new();
        (ScenarioPlayer player, SiteMetadata site) = Site();
        ScenarioResult? result = player.Play(Read(scenario), diagnostics, null, CancellationToken.None);
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder()));
        return (result ?? throw new InvalidOperationException("no run and no diagnostic"), site);
    }

    private static Scenario Read(string text)
    {
        DiagnosticBag diagnostics = new();
        Scenario? scenario = ScenarioReader.Read(new SourceText("scenario.yaml", text), diagnostics);
        return scenario ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
    }

    private static (ScenarioPlayer Player, SiteMetadata Site) Site()
    {
        const int scan = 100;
        DiagnosticBag diagnostics = new();
        CheckResult result = ProgramChecker.Check(new SourceText("feed.seq", Program), scan);
        PlantModel? plant = PlantReader.Read(new SourceText("plant.yaml", Plant), diagnostics);
        diagnostics.AddRange(result.Diagnostics);
        if (result.Program is null || plant is null || diagnostics.HasErrors)
        {
            throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        }

        SiteProgram programs = new("feed", scan, [result.Program]);
        TransitionSystem system = SiteLowering.Lower(programs);
        SiteMetadata metadata = SimulationMetadata.Of(programs, MeaningHash.Of(system), []);
        return (new ScenarioPlayer(system, metadata, plant), metadata);
    }
}
