using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.Spec.Tests.Scans;

/// <summary>One scan of a table: what is given in it, and what it shows, by column.</summary>
internal sealed record ScanRow(int Scan, ImmutableArray<string> Given, ImmutableArray<string> Shows)
{
    public static ScanRow Of(string place, ImmutableArray<string> cells, int columns)
    {
        Assert.True(cells.Length == columns, $"{place}: the row {cells[0]} has {cells.Length} cells for {columns} columns");
        return new ScanRow(
            int.Parse(cells[0], CultureInfo.InvariantCulture),
            [.. cells[1].Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(given => given.Replace("`", "", StringComparison.Ordinal))],
            [.. cells.Skip(2)]);
    }
}
