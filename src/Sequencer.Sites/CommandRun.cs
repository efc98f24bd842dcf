using System.Text.Json.Nodes;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Stages;
using Sequencer.Sites.Summaries;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>One run of a command on a loaded site: where its results go and how it ends.</summary>
internal sealed class CommandRun(OutputFolder? folder, DiagnosticBag diagnostics)
{
    public OutputFolder? Folder => folder;

    public OutputFolder NeededFolder => folder ?? throw new InvalidOperationException("this command needs a folder for its results");

    public DiagnosticBag Diagnostics => diagnostics;

    public SiteResult Finish(LoadedSite site, IReadOnlyList<StageReport> stages)
    {
        Outcome outcome = Outcomes.Worst([.. stages.Select(stage => stage.Outcome), diagnostics.HasErrors ? Outcome.Fails : Outcome.Holds]);
        List<string> files = [.. folder?.Names ?? []];
        if (folder is not null)
        {
            files.AddRange(["summary.txt", "summary.json"]);
        }

        string text = Summary.Text(site, stages, outcome, files);
        string json = Summary.Json(site, stages, outcome, files);
        folder?.Keep("summary.txt", text);
        folder?.Keep("summary.json", json);
        folder?.Commit();
        return new SiteResult(outcome, diagnostics.InOrder(), text, json, [.. files]);
    }

    public static SiteResult Mistaken(StageReport check, IReadOnlyList<Diagnostic> diagnostics)
    {
        JsonObject json = new() { ["schema"] = 1, ["outcome"] = nameof(Outcome.Fails), ["check"] = check.Json.DeepClone() };
        return new SiteResult(Outcome.Fails, [.. diagnostics], check.Headline + "\n", Summary.Print(json), []);
    }

    public static SiteResult NotDone(string reason)
    {
        JsonObject json = new() { ["schema"] = 1, ["outcome"] = nameof(Outcome.NotDone), ["reason"] = reason };
        return new SiteResult(Outcome.NotDone, [], reason + "\n", Summary.Print(json), []);
    }
}
