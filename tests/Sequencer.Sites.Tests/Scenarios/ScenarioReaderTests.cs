using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

public sealed class ScenarioReaderTests
{
    private const string Head = "scenario: 1\nname: test\nlasts: 8 h\n";
    private const string Ends = "expect: [{unit: R101, ends: Complete}]\n";

    [Fact]
    public void Every_form_of_a_file_is_read()
    {
        Scenario scenario = Good("""
            scenario: 1
            name: everything
            purpose: Each form once.
            lasts: 8 h
            seed: 7
            until: {unit: R101, state: Complete, after: 1 min}
            settings:
              R101.fill_volume: 4.500 m3
            actions:
              - {at: 1 s, press: R101.start}
              - {when: {unit: R101, step: 20, after: 30 s}, inject: AT101.frozen}
              - {when: {value: LT101, above: 4 m3, occurrence: 2}, set: R101.final_pH, to: 9.1 pH}
              - {when: {value: LT101, below: 1 m3}, clear: AT101.frozen}
              - {when: {output: P101, turns: on}, manual: P201, to: automatic}
              - {when: {alarm: T1}, lose_power: 10 min}
            expect:
              - {unit: R101, ends: Held}
              - {unit: R101, reaches: Complete, before: 6 h}
              - {unit: R101, passes: [10, 20, 30]}
              - {alarm: T1, raised: no}
              - {value: P201.total, at_least: 2 L, at_most: 3.5 L, judged: at_end}
              - {output: P201, always: off, since: {alarm: T1, after: 1 s}}
            """);
        Assert.Equal(("everything", "Each form once.", 28_800.0, 7), (scenario.Name, scenario.Description, scenario.DurationSeconds, scenario.Seed));
        Assert.Equal(new Event.StateReached("R101", UnitState.Complete), scenario.Until?.Event);
        Assert.Equal(60, scenario.Until?.DelaySeconds);
        Assert.Equal(new Measure(4.500m, "m3"), Assert.Single(scenario.Settings).Value);
        Assert.Equal(
            [
                new Deed.Press("R101.start"),
                new Deed.Inject("AT101.frozen"),
                new Deed.Set("R101.final_pH", new Measure(9.1m, "pH")),
                new Deed.Clear("AT101.frozen"),
                new Deed.Manual("P201", ManualMode.Automatic),
                new Deed.LosePower(600),
            ],
            scenario.Actions.Select(action => action.Deed));
        Assert.Equal(
            [
                new Event.Start(),
                new Event.StepActive("R101", "20"),
                new Event.ValueCrosses("LT101", true, new Measure(4m, "m3")),
                new Event.ValueCrosses("LT101", false, new Measure(1m, "m3")),
                new Event.OutputTurns("P101", true),
                new Event.AlarmRaised("T1"),
            ],
            scenario.Actions.Select(action => action.Moment.Event));
        Assert.Equal([1, 30, 0, 0, 0, 0], scenario.Actions.Select(action => action.Moment.DelaySeconds));
        Assert.Equal(2, scenario.Actions[2].Moment.Occurrence);
        Assert.Equal(6, scenario.Expectations.Length);
        Expectation.StepsVisited visited = Assert.IsType<Expectation.StepsVisited>(scenario.Expectations[2]);
        Assert.Equal(["10", "20", "30"], visited.Steps.AsEnumerable());
        Expectation.OutputAlways output = Assert.IsType<Expectation.OutputAlways>(scenario.Expectations[5]);
        Assert.False(output.On);
        Assert.Equal(1, output.Since?.DelaySeconds);
    }

    [Theory]
    [InlineData("name: x\nlasts: 1 h\n" + Ends, "SEQ0806")]
    [InlineData("scenario: 2\nname: x\nlasts: 1 h\n" + Ends, "SEQ0808")]
    [InlineData("scenario: 1\nname: x\nlasts: 30 d\n" + Ends, "SEQ0808")]
    [InlineData("scenario: 1\nname: x\nlasts: 3 m3\n" + Ends, "SEQ0810")]
    [InlineData(Head + Ends + "actoins: []\n", "SEQ0805")]
    [InlineData(Head + Ends + "actions: [{at: 1 s}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{press: R101.start}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{at: 1 s, press: R101.start, inject: AT101.frozen}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{at: 1 s, when: {alarm: A1}, press: R101.start}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{when: {unit: R101}, press: R101.start}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{when: {value: LT101}, press: R101.start}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{when: {}, press: R101.start}]\n", "SEQ0620")]
    [InlineData(Head + Ends + "actions: [{at: 1 s, set: R101.x, to: much}]\n", "SEQ0621")]
    [InlineData(Head + Ends + "actions: [{at: 1 s, set: R101.x, to: 1 m3 h}]\n", "SEQ0621")]
    [InlineData(Head + Ends + "actions: [{at: 1 s, manual: P101, to: maybe}]\n", "SEQ0811")]
    [InlineData(Head + "expect: [{unit: R101, ends: Finished}]\n", "SEQ0811")]
    [InlineData(Head + "expect: [{unit: R101}]\n", "SEQ0620")]
    [InlineData(Head + "expect: [{unit: R101, ends: Held, reaches: Held, before: 1 h}]\n", "SEQ0620")]
    [InlineData(Head + "expect: [{value: LT101, judged: always}]\n", "SEQ0623")]
    [InlineData(Head + "expect: [{value: LT101, at_most: 3 m3}]\n", "SEQ0806")]
    [InlineData(Head + "expect: [{alarm: A1, output: P101, raised: yes}]\n", "SEQ0620")]
    public void A_file_that_cannot_be_used_is_refused_with_its_code(string text, string code)
    {
        DiagnosticBag diagnostics = new();
        Assert.Null(ScenarioReader.Read(new SourceText("scenarios/test.yaml", text), diagnostics));
        Assert.Contains(code, diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }

    [Fact]
    public void A_scenario_that_expects_nothing_is_usable_but_warned_about()
    {
        DiagnosticBag diagnostics = new();
        Assert.NotNull(ScenarioReader.Read(new SourceText("scenarios/test.yaml", Head), diagnostics));
        Diagnostic warning = Assert.Single(diagnostics.InOrder());
        Assert.Equal(("SEQ0622", Severity.Warning), (warning.Code, warning.Severity));
    }

    [Fact]
    public void All_mistakes_of_a_file_are_found_in_one_pass_with_their_places()
    {
        DiagnosticBag diagnostics = new();
        ScenarioReader.Read(new SourceText("s.yaml", Head + "actions:\n  - {at: 1 s}\n  - {at: soon, press: R101.start}\nexpect:\n  - {unit: R101, ends: Over}\n"), diagnostics);
        Assert.Equal(["5 SEQ0620", "6 SEQ0807", "8 SEQ0811"], diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Span.Start.Line} {diagnostic.Code}"));
    }

    private static Scenario Good(string text)
    {
        DiagnosticBag diagnostics = new();
        Scenario? scenario = ScenarioReader.Read(new SourceText("scenarios/test.yaml", text), diagnostics);
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder()));
        return scenario ?? throw new InvalidOperationException("no scenario and no diagnostic");
    }
}
