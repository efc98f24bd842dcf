using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Trials;

/// <summary>A scenario that is written is read again as the same one: else a saved run would be another.</summary>
public sealed class ScenarioTextTests
{
    private static readonly SourceSpan Nowhere = new SourceText("nowhere", "").Whole;

    public static TheoryData<string> Files =>
    [
        .. new[] { "fernhollow", "marlpit-wharf", "quillgate", "sedgemere" }
            .SelectMany(site => Directory.EnumerateFiles(RepositoryPath.Site(site, "scenarios"), "*.yaml"))
            .Select(file => Path.GetRelativePath(RepositoryPath.Root, file)).Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_scenario_of_the_demo_sites_comes_back(string file) => ComesBack(File.ReadAllText(RepositoryPath.At(file)));

    [Fact]
    public void Every_form_comes_back() => ComesBack("""
        scenario: 1
        name: 'everything: "quoted", a \ stroke'
        purpose: Each form once.
        lasts: 0.35 h
        seed: 7
        until: {unit: R101, state: Complete, after: 1 min}
        settings:
          R101.fill_volume: 4.500 m3
        plant:
          reagents.CAUSTIC.dissolved.sodium: 2.1 mol/L
          supplies.drains.pH: 2.05
        operator:
          - {prompt: R101.Q1, answer: "yes", after: 0.1 s}
          - {prompt: R101.Q2, answer: "no", manner: late, late_by: 3 h}
          - {prompt: R101.Q3, answer: "no", manner: never}
          - {prompt: R101.Q4, answer: "no", manner: wrong, wrong_answer: "yes"}
        actions:
          - {at: 5023.4 s, press: R101.start}
          - {when: {unit: R101, step: "20", after: 30 s}, inject: AT101.frozen}
          - {when: {value: LT101, above: 4 m3, occurrence: 2}, set: R101.final_pH, to: 9.1 pH}
          - {when: {output: P101, turns: off}, manual: P201, to: automatic}
          - {when: {asked: R101.Q9}, answer: R101.Q9, with: "yes"}
          - {when: {alarm: T1}, lose_power: 10 min}
        expect:
          - {unit: R101, ends: Held}
          - {unit: R101, reaches: Complete, before: 6 h}
          - {unit: R101, passes: ["10", "20"]}
          - {unit: R101, remains_in: "10", at_least: 2 min}
          - {alarm: T1, raised: no}
          - {value: P201.total, at_most: 3.5 L, judged: at_end}
          - {output: P201, always: off, since: {alarm: T1, after: 1 s}}
          - {requirement: H1, broken_at: 3 s}
        """);

    [Fact]
    public void A_run_without_the_plant_comes_back() => ComesBack("""
        scenario: 1
        name: inputs
        lasts: 1 s
        inputs:
          - {at: 0.1 s, R101.start: 1}
          - {at: 0.2 s, LT101: 4.000 m3}
        expect:
          - {unit: R101, ends: Running}
        """);

    /// <summary>Compared as text: a second writing shows every field that the first reading has.</summary>
    private static void ComesBack(string text)
    {
        Scenario first = Read(text);
        Scenario second = Read(ScenarioText.Write(first));
        Assert.Equal(Shown(first), Shown(second));
        Assert.Equal(ScenarioText.Write(first), ScenarioText.Write(second));
    }

    private static Scenario Read(string text)
    {
        DiagnosticBag diagnostics = new();
        Scenario? scenario = ScenarioReader.Read(new SourceText("scenario.yaml", text), diagnostics);
        Assert.True(scenario is not null, text + DiagnosticRenderer.Render(diagnostics.InOrder()));
        return scenario;
    }

    /// <summary>Everything but places in the text, and the recipe, whose values are written as settings.</summary>
    private static string Shown(Scenario scenario) => string.Join(
        '\n',
        [
            scenario.Name,
            scenario.Description,
            scenario.DurationSeconds.ToString("R"),
            $"{scenario.Until?.Event} {scenario.Until?.DelaySeconds:R} {scenario.Until?.Occurrence}",
            $"{scenario.Seed}",
            .. scenario.Settings.Select(setting => $"{setting.Parameter} {setting.Value}"),
            .. scenario.PlantChanges.Select(change => $"{change.Place.Value} {change.Value.Value}"),
            .. scenario.Inputs.Select(given => $"{given.Seconds:R} {given.Input} {given.Value}"),
            .. scenario.Operator.Select(rule => $"{rule with { Span = Nowhere }}"),
            .. scenario.Actions.Select(action => $"{action.Moment.Event} {action.Moment.DelaySeconds:R} {action.Moment.Occurrence} {action.Deed}"),
            .. scenario.Expectations.Select(expectation => Shown(expectation)),
        ]);

    private static string Shown(Expectation expectation)
    {
        Moment? since = expectation.Since;
        string words = $"{expectation with { Since = null, Span = Nowhere }} {since?.Event} {since?.DelaySeconds:R} {since?.Occurrence}";
        return expectation is Expectation.StepsVisited visited ? words + string.Join(' ', visited.Steps) : words;
    }
}
