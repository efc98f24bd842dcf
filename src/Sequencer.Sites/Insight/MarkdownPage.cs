using System.Text;

namespace Sequencer.Sites.Insight;

/// <summary>A page of Markdown under construction: headings, paragraphs and tables whose columns line up in plain text too.</summary>
internal sealed class MarkdownPage
{
    private const int WidestColumn = 60;

    private readonly StringBuilder _text = new();

    public MarkdownPage(LoadedSite site, string title)
    {
        _text.Append($"# {title}\n");
        Paragraph($"{site.Description.Name}: {site.Description.Title}, revision {site.Description.Revision}, meaning {site.MeaningHash[..16]}");
    }

    public void Heading(string words) => _text.Append($"\n## {words}\n");

    public void Paragraph(string words) => _text.Append($"\n{words}\n");

    public void Table(IReadOnlyList<string> headings, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        string[][] cells = [[.. headings], .. rows.Select(row => row.Select(Cell).ToArray())];
        int[] widths = [.. headings.Select((_, column) => Math.Min(WidestColumn, cells.Max(row => row[column].Length)))];
        _text.Append('\n').Append(Line(cells[0], widths));
        _text.Append($"| {string.Join(" | ", widths.Select(width => new string('-', Math.Max(3, width))))} |\n");
        foreach (string[] row in cells.Skip(1))
        {
            _text.Append(Line(row, widths));
        }
    }

    /// <summary>The page, ended by the caution that every page carries.</summary>
    public string Finish()
    {
        Heading("What this page is not");
        Paragraph(
            "It supports a review by competent people. It replaces no hazard study, no functional-safety assessment to IEC 61511, no local\n" +
            "code and no licensed practice. It speaks of the program under the assumptions written in it, not of the plant. Interlocks in a\n" +
            "process controller are not a safety instrumented system, and emergency stops act in hardware.");
        return _text.ToString();
    }

    private static string Line(string[] row, int[] widths) =>
        $"| {string.Join(" | ", row.Zip(widths, (cell, width) => cell.PadRight(Math.Max(3, width))))} |".TrimEnd() + "\n";

    private static string Cell(string words) => words.ReplaceLineEndings(" ").Replace("|", "\\|", StringComparison.Ordinal);
}
