using System.Globalization;
using System.Text.Json.Nodes;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Stages;

/// <summary>The programs as structured text, read back and run beside the program on random inputs.</summary>
internal static class ExportStage
{
    private const int LockstepScans = 20_000;
    private const int LockstepSeed = 1;

    public static StageReport Run(LoadedSite site, OutputFolder folder, CancellationToken cancellation)
    {
        StructuredTextExport export = Write(site);
        string name = FileNames.Of(site.Description.Name) + ".st";
        folder.Keep(name, export.Text);
        int lines = export.Text.Count(character => character == '\n');
        ReadBackResult result = ReadBack.Run(site.System, export, LockstepScans, LockstepSeed, cancellation);
        JsonObject json = new()
        {
            ["file"] = name,
            ["lines"] = lines,
            ["lockstep"] = new JsonObject
            {
                ["scans"] = result.Scans,
                ["variables"] = result.Compared,
                ["agrees"] = result.Agrees,
                ["difference"] = result.Difference?.ToString(),
            },
        };
        return new StageReport(
            "export",
            result.Agrees ? Outcome.Holds : Outcome.Fails,
            string.Create(CultureInfo.InvariantCulture, $"{lines} lines of structured text in {name}"),
            [Words(result)],
            json);
    }

    private static string Words(ReadBackResult result)
    {
        if (result.Agrees)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"read back and run beside the program on random inputs: {result.Scans} scans, {result.Compared} variables, no difference (a test, not a proof)");
        }

        return result.Difference is { } difference
            ? $"the text does not do what the program does: {difference}"
            : $"the text cannot be read back: {string.Join("; ", result.Diagnostics.Select(diagnostic => diagnostic.Message))}";
    }

    internal static StructuredTextExport Write(LoadedSite site) => StructuredTextWriter.Write(
        site.Programs, new ExportHeader(site.Description.Name, site.Description.Revision, site.MeaningHash));
}
