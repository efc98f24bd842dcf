using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using Sequencer.Sites.Folders;
using Sequencer.Text;

namespace Sequencer.Sites.Mending;

/// <summary>Puts the fixes that a check offers into the site's files: all of a file or none of them, each file written whole.</summary>
internal sealed class SiteMending
{
    private readonly SiteFolder _folder;
    private readonly StringBuilder _text = new();
    private readonly JsonArray _mended = [];
    private readonly List<string> _files = [];

    private SiteMending(SiteFolder folder) => _folder = folder;

    /// <summary>What was done, for a person; the same as JSON; and the files that were written.</summary>
    public string Text => _text.ToString();

    public JsonArray Json => _mended;

    public ImmutableArray<string> Files => [.. _files];

    /// <summary>Why a file could not be written; null where none was asked for in vain.</summary>
    public string? Failure { get; private set; }

    public static SiteMending Apply(SiteFolder folder, IEnumerable<Diagnostic> diagnostics)
    {
        SiteMending mending = new(folder);
        foreach (IGrouping<string, Diagnostic> file in diagnostics.Where(diagnostic => diagnostic.Fix is not null).GroupBy(diagnostic => diagnostic.Fix!.Edits[0].Span.Source.Path))
        {
            mending.Mend(file.Key, [.. file]);
        }

        if (mending._text.Length == 0)
        {
            mending._text.Append("there is nothing here that can be mended without asking\n");
        }

        return mending;
    }

    private void Mend(string path, Diagnostic[] diagnostics)
    {
        string name = path[(_folder.Shown.Length + 1)..];
        try
        {
            byte[] content = _folder.Content(name);
            bool hasMark = content.AsSpan().StartsWith(Encoding.UTF8.Preamble);
            string written = Encoding.UTF8.GetString(content.AsSpan(hasMark ? Encoding.UTF8.Preamble.Length : 0));
            if (TextEdits.Apply(written, diagnostics.SelectMany(diagnostic => diagnostic.Fix!.Edits)) is not { } mended)
            {
                _text.Append($"not mended: {path}: two of its mends touch the same words, or the file has changed; mend it by hand\n");
                return;
            }

            _folder.Replace(name, [.. hasMark ? Encoding.UTF8.Preamble : [], .. Encoding.UTF8.GetBytes(mended)]);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            Failure = $"`{path}` cannot be mended: {failure.Message}";
            return;
        }

        _files.Add(path);
        _text.Append($"mended: {path}\n");
        foreach (Diagnostic diagnostic in diagnostics.DistinctBy(diagnostic => (diagnostic.Fix!.Title, diagnostic.Fix.Edits[0])))
        {
            Tell(path, diagnostic.Code, diagnostic.Fix!);
        }
    }

    private void Tell(string path, string code, Fix fix)
    {
        LinePosition place = fix.Edits[0].Span.Start;
        _text.Append($"  line {place}: {fix.Title} ({code})\n");
        _mended.Add(new JsonObject { ["file"] = path, ["line"] = place.Line, ["column"] = place.Column, ["code"] = code, ["title"] = fix.Title });
    }
}
