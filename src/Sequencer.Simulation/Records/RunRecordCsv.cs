using System.Globalization;

namespace Sequencer.Simulation.Records;

/// <summary>
/// A run record as comma-separated text: a header with units, LF, a full stop in numbers, words quoted
/// only where they must be (RFC 4180); a value that does not exist leaves its field empty.
/// </summary>
public static class RunRecordCsv
{
    public static void Write(RunRecord record, TextWriter writer)
    {
        writer.Write("time s");
        foreach (RunColumn column in record.Columns)
        {
            writer.Write(',');
            writer.Write(Quoted(column.Unit.Length == 0 ? column.Name : $"{column.Name} {column.Unit}"));
        }

        writer.Write('\n');
        Span<char> buffer = stackalloc char[64];
        for (int row = 0; row < record.Table.Rows; row++)
        {
            WriteNumber(writer, buffer, record.SecondsAt(record.Table.Scan(row)), 3);
            for (int column = 0; column < record.Columns.Length; column++)
            {
                writer.Write(',');
                WriteValue(writer, buffer, record.Columns[column], record.Table.Value(row, column));
            }

            writer.Write('\n');
        }
    }

    private static void WriteValue(TextWriter writer, Span<char> buffer, RunColumn column, double value)
    {
        if (column.Labels.Length > 0)
        {
            int label = (int)value;
            writer.Write(label >= 0 && label < column.Labels.Length ? Quoted(column.Labels[label]) : "");
        }
        else
        {
            WriteNumber(writer, buffer, value, column.Decimals);
        }
    }

    private static void WriteNumber(TextWriter writer, Span<char> buffer, double value, int decimals)
    {
        if (!double.IsFinite(value))
        {
            return;
        }

        double rounded = Math.Round(value, decimals) + 0.0;
        ReadOnlySpan<char> format = decimals switch
        {
            0 => "0",
            1 => "0.#",
            2 => "0.##",
            3 => "0.###",
            _ => "0.######",
        };
        writer.Write(rounded.TryFormat(buffer, out int written, format, CultureInfo.InvariantCulture)
            ? buffer[..written]
            : rounded.ToString(CultureInfo.InvariantCulture));
    }

    private static string Quoted(string words) =>
        words.AsSpan().IndexOfAny(",\"\n") < 0 ? words : $"\"{words.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
