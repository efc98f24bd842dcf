using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Language.Formatting;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Summaries;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>Brings the programs of a site and the libraries that they use, or one file, into the canonical layout: all of them or, where one has mistakes, none.</summary>
public static class ProgramLayout
{
    private const string ProgramEnding = ".seq";
    private const string LibraryEnding = ".seqlib";

    /// <param name="path">A site's folder, or a program file.</param>
    /// <param name="check">Write nothing; that a file would change counts as a failure.</param>
    public static SiteResult Format(string path, bool check)
    {
        if (string.IsNullOrWhiteSpace(path))
        {
            return CommandRun.NotDone("the site's folder or program has no name");
        }

        if (File.Exists(path) && !path.EndsWith(ProgramEnding, StringComparison.Ordinal) && !path.EndsWith(LibraryEnding, StringComparison.Ordinal))
        {
            return CommandRun.NotDone($"`{path}` is no program; name a site's folder or a file that ends in `{ProgramEnding}` or `{LibraryEnding}`");
        }

        if (!File.Exists(path) && !Directory.Exists(path))
        {
            return CommandRun.NotDone($"there is no folder and no file `{path}`");
        }

        DiagnosticBag diagnostics = new();
        SiteFolder folder = new(File.Exists(path) ? Parent(path) : path);
        List<(string Name, byte[] Content)> files = [];
        Queue<PlacedFile> waiting = new(Named(path, folder, diagnostics));
        HashSet<string> seen = new(StringComparer.Ordinal);
        while (waiting.TryDequeue(out PlacedFile? file))
        {
            if (!seen.Add(file.Name) || folder.Read(file.Name, file.Span, diagnostics) is not { } text)
            {
                continue;
            }

            FormatResult result = ProgramFormatter.Format(text);
            diagnostics.AddRange(result.Diagnostics);
            files.Add((file.Name, new UTF8Encoding(false).GetBytes(result.Text ?? "")));
            if (Directory.Exists(path))
            {
                result.Uses.ToList().ForEach(use => waiting.Enqueue(new PlacedFile(use.File, use.Span)));
            }
        }

        return diagnostics.HasErrors ? Refused(diagnostics) : Written(folder, files, check, diagnostics);
    }

    private static ImmutableArray<PlacedFile> Named(string path, SiteFolder folder, DiagnosticBag diagnostics)
    {
        string name = File.Exists(path) ? Path.GetFileName(path) : SiteLoader.DescriptionName;
        SourceSpan nowhere = new SourceText($"{folder.Shown}/{name}", "").Whole;
        if (File.Exists(path))
        {
            return [new PlacedFile(name, nowhere)];
        }

        SourceText? text = folder.Read(name, nowhere, diagnostics);
        SiteDescription? description = text is null ? null : SiteDescriptionReader.Read(text, diagnostics);
        return description is null ? [] : description.Programs;
    }

    private static SiteResult Refused(DiagnosticBag diagnostics) =>
        Result(Outcome.Fails, diagnostics, "mistakes keep the programs from being laid out; nothing was written\n", [], []);

    private static SiteResult Written(SiteFolder folder, List<(string Name, byte[] Content)> files, bool check, DiagnosticBag diagnostics)
    {
        try
        {
            List<(string Name, byte[] Content)> changed = [.. files.Where(file => !folder.Holds(file.Name, file.Content))];
            string[] names = [.. changed.Select(file => $"{folder.Shown}/{file.Name}")];
            string[] others = [.. files.Except(changed).Select(file => $"{folder.Shown}/{file.Name}")];
            if (!check)
            {
                changed.ForEach(file => folder.Replace(file.Name, file.Content));
            }

            string text = string.Concat(names.Select(name => $"{(check ? "would change" : "laid out")}: {name}\n"))
                + string.Concat(others.Select(name => $"as it should be: {name}\n"));
            return Result(check && names.Length > 0 ? Outcome.Fails : Outcome.Holds, diagnostics, text, names, check ? [] : names);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return CommandRun.NotDone($"a program cannot be written: {failure.Message}");
        }
    }

    private static SiteResult Result(Outcome outcome, DiagnosticBag diagnostics, string text, string[] changes, string[] written)
    {
        JsonObject json = new()
        {
            ["schema"] = 1,
            ["outcome"] = outcome.ToString(),
            ["changes"] = new JsonArray([.. changes.Select(name => JsonValue.Create(name))]),
            ["diagnostics"] = DiagnosticRenderer.ToJson(diagnostics.InOrder()),
        };
        return new SiteResult(outcome, diagnostics.InOrder(), text, Summary.Print(json), [.. written]);
    }

    private static string Parent(string path) => Path.GetDirectoryName(path) is { Length: > 0 } parent ? parent : ".";
}
