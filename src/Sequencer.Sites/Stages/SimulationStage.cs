using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Reports;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Folders;
using Sequencer.Text;

namespace Sequencer.Sites.Stages;

/// <summary>
/// Scenarios played on the plant. The first one (by name) or the one asked for leaves its record, trend,
/// report and the site's figures at the top of the folder, each other one in a folder of its own.
/// </summary>
internal static class SimulationStage
{
    public static StageReport Run(
        LoadedSite site,
        IReadOnlyList<Scenario> scenarios,
        OutputFolder folder,
        DiagnosticBag diagnostics,
        IProgress<StageProgress> progress,
        CancellationToken cancellation)
    {
        using EmbeddedFont font = new();
        List<string> lines = [];
        JsonArray array = [];
        int failed = 0;
        for (int index = 0; index < scenarios.Count; index++)
        {
            Scenario scenario = scenarios[index];
            ScenarioResult? result = Play(site, scenario, diagnostics, progress, cancellation);
            bool passed = IsAsExpected(site, result);
            failed += passed ? 0 : 1;
            string place = index == 0 ? "" : $"scenarios/{FileNames.Of(scenario.Name)}/";
            if (result is not null)
            {
                Save(site, result, place, folder, font);
                if (index == 0)
                {
                    SaveFigures(site, result.Record, folder, font);
                }

                lines.AddRange(Lines(site, result, passed));
            }
            else
            {
                lines.Add($"NOT RUN   {scenario.Name}: it does not fit the site");
            }

            array.Add(Json(scenario, result, passed, place));
        }

        Outcome outcome = failed > 0 ? Outcome.Fails : scenarios.Count == 0 ? Outcome.Undecided : Outcome.Holds;
        string headline = scenarios.Count == 0
            ? "nothing simulated: the site has no scenario"
            : string.Create(CultureInfo.InvariantCulture, $"{scenarios.Count - failed} of {scenarios.Count} scenarios as expected");
        return new StageReport("simulate", outcome, headline, lines, new JsonObject { ["scenarios"] = array });
    }

    internal static ScenarioResult? Play(
        LoadedSite site, Scenario scenario, DiagnosticBag diagnostics, IProgress<StageProgress> progress, CancellationToken cancellation)
    {
        SpecialisingStepper stepper = new(site.System, ClosedLoop.Observed(site.System, site.Metadata));
        ClosedLoop? loop = ScenarioFit.Join(site, stepper, scenario, diagnostics);
        ScenarioRun? run = loop is null ? null : ScenarioRun.Bind(loop, scenario, diagnostics);
        return run?.Play(new Clock(scenario.Name, progress), cancellation);
    }

    /// <summary>Every expectation passed, and nothing was discharged outside the site's limits.</summary>
    internal static bool IsAsExpected(LoadedSite site, ScenarioResult? result) => result is { Passed: true } && !Outside(site, result).Any();

    private static void Save(LoadedSite site, ScenarioResult result, string place, OutputFolder folder, EmbeddedFont font)
    {
        using StringWriter csv = new(CultureInfo.InvariantCulture);
        RunRecordCsv.Write(result.Record, csv);
        folder.Keep(place + "run.csv", csv.ToString());
        folder.Keep(place + "trend.svg", TrendPicture.Svg(result.Record, site.Metadata, font));
        folder.Keep(place + "trend.png", TrendPicture.Png(result.Record, site.Metadata, font));
        folder.Keep(place + "batch-report.md", BatchReport.Write(result, site.Metadata));
    }

    private static void SaveFigures(LoadedSite site, RunRecord record, OutputFolder folder, EmbeddedFont font)
    {
        folder.Keep("site-figures.md", SiteFigures.Write(record, site.Metadata));
        folder.Keep("flow.svg", FlowPicture.Svg(record, site.Metadata.Name, font));
        folder.Keep("flow.png", FlowPicture.Png(record, site.Metadata.Name, font));
    }

    internal static IEnumerable<DischargeFinding> Outside(LoadedSite site, ScenarioResult result) =>
        DischargeFinding.Of(result.Record, site.Metadata).Where(finding => finding.IsOutside);

    private static IEnumerable<string> Lines(LoadedSite site, ScenarioResult result, bool passed)
    {
        double seconds = result.Record.Seconds;
        string length = seconds < 60 ? string.Create(CultureInfo.InvariantCulture, $"{seconds:0.#} s") : string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min");
        yield return $"{(passed ? "as expected" : "NOT AS EXPECTED")}  {result.Scenario.Name}{Recipe(result.Scenario)}, {length}";
        foreach (ExpectationResult expectation in result.Expectations.Where(expectation => !expectation.Passed))
        {
            yield return $"          expected {expectation.Expected}; seen: {expectation.Seen}";
        }

        foreach (DischargeFinding finding in Outside(site, result))
        {
            yield return string.Create(
                CultureInfo.InvariantCulture, $"          outside the site's limits: {finding.Limit.Title}, {finding.Value:0.###} {finding.Unit}");
        }

        foreach (UndoneDeed undone in result.Undone)
        {
            yield return $"          never came to pass: line {undone.Span.Start.Line} of the scenario";
        }

        if (result.Record.Failure is { } failure)
        {
            yield return $"          the plant model stopped: {failure}";
        }
    }

    private static string Recipe(Scenario scenario) => scenario.Recipe is { } recipe ? $", recipe {recipe.Name}" : "";

    private static JsonObject Json(Scenario scenario, ScenarioResult? result, bool passed, string place) => new()
    {
        ["name"] = scenario.Name,
        ["recipe"] = scenario.Recipe?.Name,
        ["passed"] = passed,
        ["minutes"] = result is null ? null : Math.Round(result.Record.Seconds / 60, 3),
        ["files"] = place.Length == 0 ? "." : place,
        ["expectations"] = new JsonArray(
        [
            .. (result is null ? [] : result.Expectations.AsEnumerable()).Select(expectation => (JsonNode)new JsonObject
            {
                ["passed"] = expectation.Passed,
                ["expected"] = expectation.Expected,
                ["seen"] = expectation.Seen,
            }),
        ]),
    };

    private sealed class Clock(string scenario, IProgress<StageProgress> progress) : IProgress<double>
    {
        public void Report(double value) =>
            progress.Report(new StageProgress("simulate", string.Create(CultureInfo.InvariantCulture, $"{scenario}: {value / 60:0} min")));
    }
}
