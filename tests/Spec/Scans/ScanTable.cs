using System.Collections.Immutable;
using Sequencer.Testing;

namespace Sequencer.Spec.Tests.Scans;

/// <summary>
/// A program of a page and the table below it: what is given in a scan, and what the scan shows. A row may leave scans out, in
/// which nothing is given.
/// </summary>
internal sealed record ScanTable(string Place, string Program, ImmutableArray<string> Columns, ImmutableArray<ScanRow> Rows)
{
    private const string Fence = "```seq scans";

    public static IEnumerable<ScanTable> Of(string page)
    {
        string[] lines = File.ReadAllText(RepositoryPath.At(page.Split('/'))).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n');
        for (int line = 0; line < lines.Length; line++)
        {
            if (lines[line] != Fence)
            {
                continue;
            }

            string place = FormattableString.Invariant($"{page}:{line + 1}");
            int end = Array.IndexOf(lines, "```", line);
            int table = Array.FindIndex(lines, end + 1, text => text.Length > 0);
            Assert.True(table > 0 && lines[table].StartsWith("| scan | given |", StringComparison.Ordinal), $"{place}: no table of scans below");
            ImmutableArray<string> heads = Cells(lines[table]);
            yield return new ScanTable(
                place,
                string.Join('\n', lines[(line + 1)..end]) + "\n",
                [.. heads.Skip(2).Select(head => head.Trim('`'))],
                [.. lines[(table + 2)..].TakeWhile(text => text.StartsWith('|')).Select(text => ScanRow.Of(place, Cells(text), heads.Length))]);
        }
    }

    public override string ToString() => Place;

    private static ImmutableArray<string> Cells(string line) => [.. line.Trim().Trim('|').Split('|').Select(cell => cell.Trim())];
}
