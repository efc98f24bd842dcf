using System.Text;

namespace Sequencer.Simulation.Reports;

/// <summary>A table of a report; a bar inside a cell is escaped.</summary>
internal sealed class MarkdownTable(params string[] heads)
{
    private readonly List<string[]> _rows = [];

    public void Add(params string[] cells)
    {
        if (cells.Length != heads.Length)
        {
            throw new ArgumentException($"{cells.Length} cells under {heads.Length} heads", nameof(cells));
        }

        _rows.Add(cells);
    }

    /// <summary>The table, or the words where it would have no row.</summary>
    public void Append(StringBuilder text, string otherwise)
    {
        if (_rows.Count == 0)
        {
            text.Append(otherwise).Append("\n\n");
            return;
        }

        AppendRow(text, heads);
        AppendRow(text, [.. heads.Select(_ => "---")]);
        foreach (string[] row in _rows)
        {
            AppendRow(text, row);
        }

        text.Append('\n');
    }

    private static void AppendRow(StringBuilder text, string[] cells) =>
        text.Append("| ").AppendJoin(" | ", cells.Select(cell => cell.Replace("|", "\\|", StringComparison.Ordinal).Replace('\n', ' '))).Append(" |\n");
}
