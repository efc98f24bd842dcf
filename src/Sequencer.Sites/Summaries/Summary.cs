using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Summaries;

/// <summary>One page on what was found, for a person and for a machine.</summary>
internal static class Summary
{
    /// <summary>Quotes and backticks stay readable: this is never put into a web page.</summary>
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Text(LoadedSite site, IReadOnlyList<StageReport> stages, Outcome outcome, IReadOnlyList<string> files)
    {
        StringBuilder text = new();
        text.Append($"{site.Description.Name}: {site.Description.Title}\n");
        text.Append($"revision {site.Description.Revision}, meaning {site.MeaningHash}\n\n");
        text.Append(Verdict(outcome, stages)).Append("\n\n");
        foreach (StageReport stage in stages)
        {
            text.Append($"{stage.Stage,-9} {stage.Headline}\n");
        }

        foreach (StageReport stage in stages.Where(stage => stage.Lines.Count > 0))
        {
            text.Append($"\n{stage.Stage}\n");
            foreach (string line in stage.Lines)
            {
                text.Append($"  {line}\n");
            }
        }

        if (files.Count > 0)
        {
            text.Append("\nfiles\n");
            foreach (string file in files)
            {
                text.Append($"  {file}\n");
            }
        }

        if (stages.Count == 1)
        {
            return text.ToString();
        }

        text.Append(
            """

            What this says, and what it does not
              A requirement that holds, holds of the program for any inputs, settings in range and times, under the
              assumptions named with it. A simulated run is one run of a model, no proof about the real plant.
              Not covered: chemistry beyond the model, dead zones, ageing of probes beyond the named faults, the
              hardware emergency-stop chain, field wiring, the controller's own firmware.
              These results support review by a competent person. They replace no hazard study, no functional-safety
              assessment to IEC 61511 and no local code. The chemicals named here burn and blind.

            """.Replace("\r\n", "\n", StringComparison.Ordinal));
        return text.ToString();
    }

    public static string Json(LoadedSite site, IReadOnlyList<StageReport> stages, Outcome outcome, IReadOnlyList<string> files)
    {
        JsonObject json = new()
        {
            ["schema"] = 1,
            ["site"] = site.Description.Name,
            ["revision"] = site.Description.Revision,
            ["meaning"] = site.MeaningHash,
            ["outcome"] = outcome.ToString(),
            ["files"] = new JsonArray([.. files.Select(file => JsonValue.Create(file))]),
        };
        foreach (StageReport stage in stages)
        {
            json[stage.Stage] = new JsonObject
            {
                ["outcome"] = stage.Outcome.ToString(),
                ["headline"] = stage.Headline,
                ["detail"] = stage.Json.DeepClone(),
            };
        }

        return Print(json);
    }

    /// <summary>The one layout of all JSON that is printed or written.</summary>
    public static string Print(JsonObject json) => json.ToJsonString(Indented) + "\n";

    private static string Verdict(Outcome outcome, IReadOnlyList<StageReport> stages) => outcome switch
    {
        Outcome.Holds or Outcome.Undecided or Outcome.Fails when stages.Select(stage => stage.Verdict).OfType<string>().LastOrDefault() is { } verdict => verdict,
        Outcome.Holds when stages.Count == 1 => "NO MISTAKES FOUND; NOTHING WAS PROVED OR SIMULATED",
        Outcome.Holds => "EVERYTHING ASKED HOLDS",
        Outcome.Fails => "SOMETHING FAILS",
        Outcome.Undecided => "NOTHING FAILS, BUT SOMETHING IS UNDECIDED",
        _ => "NOT DONE",
    };
}
