using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Tests.Traces;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>Scenarios whose inputs are given, on the small site with one pit.</summary>
public sealed class InputScenarioTests
{
    private static readonly Lazy<LoadedSite> Site = new(() => BrokenPit.Load("one-pit", "pit.seq", "language 1", "language 1"));

    [Fact]
    public void The_plant_stands_still_and_inputs_are_at_rest()
    {
        ScenarioResult result = Play(
            "inputs: [{at: 0.1 s, TK301.start: 1}]",
            "{unit: TK301, ends: Running}, {value: AT301, at_least: 7 pH, at_most: 7 pH, judged: always}, {value: TK301.volume, at_most: 0 L, judged: always}");
        Assert.All(result.Expectations.Take(2), expectation => Assert.True(expectation.Passed, expectation.Seen));
    }

    [Fact]
    public void A_value_holds_from_its_scan_on()
    {
        ScenarioResult result = Play(
            "inputs: [{at: 0.25 s, AT301: 9.5 pH}]",
            "{value: AT301, at_least: 9.5 pH, judged: at_end}, {value: AT301, at_most: 9 pH, judged: always}");
        Assert.True(result.Expectations[0].Passed);
        Assert.Equal(3, result.Expectations[1].Scan);
    }

    [Theory]
    [InlineData("TK301.begin: 1", "SEQ0610")]
    [InlineData("AT301: 7 m3", "SEQ0611")]
    [InlineData("AT301: 7.001 pH", "SEQ0612")]
    [InlineData("LSH301.contact: 2", "SEQ0613")]
    [InlineData("AT301: high", "SEQ0621")]
    public void What_does_not_fit_an_input_is_said(string given, string code) =>
        Assert.Contains(code, Codes($"inputs: [{{at: 0 s, {given}}}]", "{unit: TK301, ends: Idle}"));

    [Fact]
    public void A_requirement_that_is_not_there_is_said() =>
        Assert.Contains("SEQ0610", Codes("inputs: [{at: 0 s, TK301.start: 0}]", "{requirement: H99, broken_at: 0 s}"));

    [Fact]
    public void A_requirement_that_holds_is_never_broken()
    {
        ScenarioResult result = Play("inputs: [{at: 0 s, LSHH301.contact: 0}]", "{requirement: H4, broken_at: 0.2 s}");
        Assert.Equal("never broken", Assert.Single(result.Expectations).Seen);
        Assert.False(result.Passed);
    }

    private static ScenarioResult Play(string inputs, string expected)
    {
        DiagnosticBag diagnostics = new();
        return Played(inputs, expected, diagnostics)
            ?? throw new InvalidOperationException(string.Join('\n', diagnostics.InOrder().Select(one => $"{one.Code} {one.Message}")));
    }

    private static string[] Codes(string inputs, string expected)
    {
        DiagnosticBag diagnostics = new();
        Assert.Null(Played(inputs, expected, diagnostics));
        return [.. diagnostics.InOrder().Select(one => one.Code)];
    }

    private static ScenarioResult? Played(string inputs, string expected, DiagnosticBag diagnostics)
    {
        string text = $"scenario: 1\nname: given\nlasts: 1 s\n{inputs}\nexpect: [{expected}]\n";
        Scenario? scenario = ScenarioReader.Read(new SourceText("given.yaml", text), diagnostics);
        return scenario is null
            ? null
            : new ScenarioPlayer(Site.Value.System, Site.Value.Metadata, Site.Value.Plant).Play(scenario, diagnostics, null, CancellationToken.None);
    }
}
