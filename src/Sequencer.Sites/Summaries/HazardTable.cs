using System.Text.Json.Nodes;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Summaries;

/// <summary>Every hazard of the site with its answer: the verdicts of its requirements, or why it is open.</summary>
internal static class HazardTable
{
    public static StageReport Of(LoadedSite site, StageReport? proof)
    {
        Dictionary<string, string> verdicts = new(StringComparer.Ordinal);
        foreach (JsonNode? requirement in proof?.Json["requirements"]?.AsArray() ?? [])
        {
            verdicts[requirement?["name"]?.GetValue<string>() ?? ""] = requirement?["verdict"]?.GetValue<string>() ?? "";
        }

        List<string> lines = [];
        JsonArray array = [];
        foreach (Hazard hazard in site.Description.Hazards)
        {
            string answer = hazard.Open is { } reason
                ? $"open: {reason}"
                : string.Join(", ", hazard.MetBy.Select(name => verdicts.TryGetValue(name, out string? verdict) ? $"{name} {verdict}" : $"{name} not proved in this run"));
            lines.Add($"{hazard.Id,-5} {hazard.Text}");
            lines.Add($"      {answer}");
            array.Add(new JsonObject { ["id"] = hazard.Id, ["text"] = hazard.Text, ["answer"] = answer, ["open"] = hazard.Open is not null });
        }

        int open = site.Description.Hazards.Count(hazard => hazard.Open is not null);
        string headline = $"{site.Description.Hazards.Length - open} of {site.Description.Hazards.Length} hazards met by requirements, {open} open with a reason";
        return new StageReport("hazards", Outcome.Holds, headline, lines, array);
    }
}
