using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Response;

/// <summary>
/// Reads a trend from comma-separated text: a head with the time first, as a run record has it (<c>time s</c>, <c>AT201 pH</c>, <c>P202</c>), then a row for each time. Words and
/// empty cells are no values; numbers have a full stop.
/// </summary>
public static class TrendTableReader
{
    public const int MostRows = 500_000;
    private const int MostColumns = 2_000;

    private static readonly ImmutableDictionary<string, double> Times = new Dictionary<string, double> { ["time s"] = 1.0, ["time min"] = 60.0, ["time h"] = 3600.0 }.ToImmutableDictionary();

    /// <param name="text">The trend.</param>
    /// <param name="wanted">The columns that are kept as numbers.</param>
    /// <param name="words">Those that are kept as words.</param>
    /// <param name="diagnostics">What is wrong with it.</param>
    public static TrendTable? Read(SourceText text, IReadOnlySet<string> wanted, IReadOnlySet<string> words, DiagnosticBag diagnostics)
    {
        string[] heads = [.. text.Line(1).ToString().TrimEnd('\r', '\n').Split(',').Select(head => head.Trim().Trim('"'))];
        if (!Times.TryGetValue(heads[0], out double unit))
        {
            diagnostics.Add(TrendDiagnostics.NoTime(text.At(0, heads[0].Length), heads[0]));
            return null;
        }

        if (heads.Length > MostColumns)
        {
            diagnostics.Add(YamlDiagnostics.OverLimit(text.At(0, 0), "columns", MostColumns));
            return null;
        }

        (int Place, string Name, string Unit)[] kept =
        [
            .. heads.Select((head, index) => (index, Parts: head.Split(' ', 2))).Skip(1).Where(column => wanted.Contains(column.Parts[0]))
                .Select(column => (column.index, column.Parts[0], column.Parts.Length > 1 ? column.Parts[1] : "")),
        ];
        (int Place, string Name)[] told = [.. heads.Select((head, index) => (index, head)).Skip(1).Where(column => words.Contains(column.head))];
        List<double> seconds = [];
        List<double>[] values = [.. kept.Select(_ => new List<double>())];
        List<string>[] texts = [.. told.Select(_ => new List<string>())];
        for (int line = 2; line <= text.LineCount; line++)
        {
            ReadOnlySpan<char> row = text.Line(line).TrimEnd("\r\n");
            if (row.IsEmpty)
            {
                continue;
            }

            if (!Row(text, line, row, heads.Length, unit, kept, seconds, values, diagnostics))
            {
                return null;
            }

            for (int column = 0; column < told.Length; column++)
            {
                texts[column].Add(Word(row, told[column].Place, texts[column]));
            }
        }

        return new TrendTable(
            [.. seconds],
            [.. kept.Select((column, index) => new TrendColumn(column.Name, column.Unit, [.. values[index]]))],
            [.. told.Select((column, index) => new TrendWords(column.Name, [.. texts[index]]))]);
    }

    /// <summary>What stands in a cell; the same text as in the row before where it is the same.</summary>
    private static string Word(ReadOnlySpan<char> row, int place, List<string> before)
    {
        int cell = 0;
        foreach (Range range in row.Split(','))
        {
            if (cell++ == place)
            {
                ReadOnlySpan<char> written = row[range].Trim().Trim('"');
                return before.Count > 0 && written.SequenceEqual(before[^1]) ? before[^1] : written.ToString();
            }
        }

        return "";
    }

    private static bool Row(
        SourceText text, int line, ReadOnlySpan<char> row, int columns, double unit, (int Place, string Name, string Unit)[] kept, List<double> seconds, List<double>[] values, DiagnosticBag diagnostics)
    {
        SourceSpan place = text.At(text.LineStart(line), row.Length);
        int cells = row.Count(',') + 1;
        if (cells != columns)
        {
            diagnostics.Add(TrendDiagnostics.RowOfOtherLength(place, cells, columns));
            return false;
        }

        if (seconds.Count == MostRows)
        {
            diagnostics.Add(YamlDiagnostics.OverLimit(place, "rows", MostRows));
            return false;
        }

        int next = 0;
        int cell = 0;
        foreach (Range range in row.Split(','))
        {
            ReadOnlySpan<char> written = row[range].Trim();
            bool isNumber = double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value);
            if (cell == 0)
            {
                if (!isNumber || (seconds.Count > 0 && value * unit <= seconds[^1]))
                {
                    diagnostics.Add(TrendDiagnostics.TimeDoesNotGrow(text.At(text.LineStart(line), range.End.GetOffset(row.Length)), written.ToString()));
                    return false;
                }

                seconds.Add(value * unit);
            }
            else if (next < kept.Length && kept[next].Place == cell)
            {
                values[next++].Add(isNumber ? value : double.NaN);
            }

            cell++;
        }

        return true;
    }
}
