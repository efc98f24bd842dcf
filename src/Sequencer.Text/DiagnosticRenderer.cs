using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Sequencer.Text;

/// <summary>Prints diagnostics for a person, or as JSON for a machine. The only place that lays them out.</summary>
public static class DiagnosticRenderer
{
    private const int LongestShownLine = 160;

    /// <summary>Stands where a longer line was cut.</summary>
    private const string Cut = "...";

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>
    /// The place, the source line with a marker under the span, the reason and the mend.
    /// </summary>
    public static string Render(Diagnostic diagnostic)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{diagnostic.Span.Place}: {Word(diagnostic.Severity)} {diagnostic.Code}: {diagnostic.Message}\n");
        AppendExcerpt(text, diagnostic.Span);
        foreach (RelatedNote note in diagnostic.AllNotes)
        {
            text.Append(CultureInfo.InvariantCulture, $"  see {note.Span}: {note.Message}\n");
            AppendExcerpt(text, note.Span);
        }

        text.Append(CultureInfo.InvariantCulture, $"  why:  {diagnostic.Reason}\n");
        text.Append(CultureInfo.InvariantCulture, $"  mend: {diagnostic.Mend}\n");
        if (diagnostic.Fix is { } fix)
        {
            text.Append(CultureInfo.InvariantCulture, $"  `check --mend` does it: {fix.Title}\n");
        }

        return text.ToString();
    }

    public static string Render(IEnumerable<Diagnostic> diagnostics) =>
        string.Join('\n', diagnostics.Select(Render));

    /// <summary>A JSON array, schema version 1; lines and columns count from 1, ends are exclusive.</summary>
    public static string RenderJson(IEnumerable<Diagnostic> diagnostics) =>
        ToJson(diagnostics).ToJsonString(Indented);

    public static JsonArray ToJson(IEnumerable<Diagnostic> diagnostics)
    {
        JsonArray array = [];
        foreach (Diagnostic diagnostic in diagnostics)
        {
            JsonObject item = Place(diagnostic.Span);
            item["code"] = diagnostic.Code;
            item["severity"] = Word(diagnostic.Severity);
            item["message"] = diagnostic.Message;
            item["reason"] = diagnostic.Reason;
            item["mend"] = diagnostic.Mend;
            JsonArray notes = [];
            foreach (RelatedNote note in diagnostic.AllNotes)
            {
                JsonObject related = Place(note.Span);
                related["message"] = note.Message;
                notes.Add(related);
            }

            item["notes"] = notes;
            if (diagnostic.Fix is { } fix)
            {
                item["fix"] = ToJson(fix);
            }

            array.Add(item);
        }

        return array;
    }

    private static JsonObject ToJson(Fix fix)
    {
        JsonArray edits = [];
        foreach (TextEdit edit in fix.Edits)
        {
            JsonObject item = Place(edit.Span);
            item["text"] = edit.Text;
            edits.Add(item);
        }

        return new JsonObject { ["title"] = fix.Title, ["edits"] = edits };
    }

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    private static JsonObject Place(SourceSpan span) => new()
    {
        ["file"] = span.Source.Path,
        ["line"] = span.Start.Line,
        ["column"] = span.Start.Column,
        ["endLine"] = span.End.Line,
        ["endColumn"] = span.End.Column,
    };

    private static void AppendExcerpt(StringBuilder text, SourceSpan span)
    {
        LinePosition start = span.Source.Position(span.Span.Start);
        ReadOnlySpan<char> line = span.Source.Line(start.Line);
        int from = Math.Max(0, Math.Min(start.Column - 1 - (LongestShownLine / 2), line.Length - LongestShownLine));
        ReadOnlySpan<char> shown = line.Slice(from, Math.Min(LongestShownLine, line.Length - from));
        string number = start.Line.ToString(CultureInfo.InvariantCulture);
        string before = from > 0 ? Cut : "";
        text.Append("  ").Append(number).Append(" | ").Append(before);
        foreach (char character in shown)
        {
            text.Append(char.IsControl(character) && character != '\t' ? '\uFFFD' : character);
        }

        text.Append(from + shown.Length < line.Length ? Cut : "").Append('\n');
        int markStart = start.Column - 1 - from;
        int markLength = Math.Clamp(span.Span.Length, 1, Math.Max(1, shown.Length - markStart));
        text.Append(' ', 2 + number.Length).Append(" | ").Append(' ', before.Length);
        for (int index = 0; index < markStart; index++)
        {
            text.Append(index < shown.Length && shown[index] == '\t' ? '\t' : ' ');
        }

        text.Append('^', markLength).Append('\n');
    }
}
