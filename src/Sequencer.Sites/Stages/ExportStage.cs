using System.Text.Json.Nodes;
using Sequencer.Export.Writing;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Stages;

/// <summary>The programs as structured text.</summary>
internal static class ExportStage
{
    public static StageReport Run(LoadedSite site, OutputFolder folder)
    {
        StructuredTextExport export = Write(site);
        string name = FileName(site);
        folder.Write(name, export.Text);
        int lines = export.Text.Count(character => character == '\n');
        JsonObject json = new() { ["file"] = name, ["lines"] = lines };
        return new StageReport("export", Outcome.Holds, $"{lines} lines of structured text in {name}", [], json);
    }

    internal static StructuredTextExport Write(LoadedSite site) => StructuredTextWriter.Write(
        site.Programs, new ExportHeader(site.Description.Name, site.Description.Revision, site.MeaningHash));

    private static string FileName(LoadedSite site) =>
        string.Concat(site.Description.Name.ToLowerInvariant().Select(character => char.IsAsciiLetterOrDigit(character) ? character : '-')) + ".st";
}
