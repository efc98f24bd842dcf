using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Sites.Stages;

/// <summary>What the checker says of the site's files.</summary>
internal static class CheckStage
{
    public static StageReport Report(IReadOnlyList<Diagnostic> diagnostics, LoadedSite? site)
    {
        int errors = diagnostics.Count(diagnostic => diagnostic.Severity == Severity.Error);
        int warnings = diagnostics.Count(diagnostic => diagnostic.Severity == Severity.Warning);
        Outcome outcome = site is null ? Outcome.Fails : Outcome.Holds;
        string headline = errors == 0 && warnings == 0
            ? "no mistakes found"
            : $"{Count(errors, "error")}, {Count(warnings, "warning")}";
        List<string> lines = [];
        if (site is not null)
        {
            lines.Add($"{site.Programs.Units.Sum(unit => unit.Steps.Length)} steps, "
                + $"{site.System.Inputs.Length} inputs, {site.System.Outputs.Length} outputs, {site.System.States.Length} states");
            foreach ((UnitProgram unit, ImmutableArray<StateTime> times) in site.Programs.Units.Select(unit => (unit, LongestTime.Of(unit, site.Programs.ScanMilliseconds))))
            {
                lines.AddRange(TimeLines.Of(unit, times));
            }

            if (!site.Recipes.IsEmpty)
            {
                lines.Add($"{Count(site.Recipes.Length, "recipe")} in range: {string.Join(", ", site.Recipes.Select(recipe => recipe.Name))}");
            }
        }

        JsonObject json = new()
        {
            ["errors"] = errors,
            ["warnings"] = warnings,
            ["diagnostics"] = DiagnosticRenderer.ToJson(diagnostics),
        };
        if (site is not null)
        {
            json["times"] = new JsonArray([.. site.Programs.Units.SelectMany(unit => TimeLines.Json(unit, LongestTime.Of(unit, site.Programs.ScanMilliseconds))).Select(time => time?.DeepClone())]);
        }

        return new StageReport("check", outcome, headline, lines, json);
    }

    private static string Count(int number, string noun) => number == 1 ? $"1 {noun}" : $"{number} {noun}s";
}
