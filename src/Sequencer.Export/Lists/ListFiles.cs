using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using MiniExcelLibs;
using MiniExcelLibs.Csv;
using MiniExcelLibs.OpenXml;

namespace Sequencer.Export.Lists;

/// <summary>Lists as comma-separated text (RFC 4180) and as a workbook (ISO/IEC 29500), the same bytes for the same lists.</summary>
public static partial class ListFiles
{
    private static readonly DateTimeOffset FirstTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Csv(ListTable table)
    {
        using MemoryStream file = new();
        CsvConfiguration options = new() { NewLine = "\n", StreamWriterFunc = static stream => new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) };
        MiniExcel.SaveAs(file, Rows(table), excelType: ExcelType.CSV, configuration: options);
        return file.ToArray();
    }

    /// <summary>A sheet for each list.</summary>
    public static byte[] Workbook(IEnumerable<ListTable> tables)
    {
        using MemoryStream file = new();
        OpenXmlConfiguration options = new() { EnableAutoWidth = true, FastMode = true, AutoFilter = true, FreezeRowCount = 1 };
        MiniExcel.SaveAs(file, tables.ToDictionary(table => table.Name, table => (object)Rows(table)), configuration: options);
        file.Position = 0;
        return Repeatable(file);
    }

    /// <summary>The library gives each workbook its time and parts with random names: the time becomes the first that the format knows, the names numbers.</summary>
    private static byte[] Repeatable(Stream workbook)
    {
        Dictionary<string, string> names = new(StringComparer.Ordinal);
        using MemoryStream file = new();
        using (ZipArchive from = new(workbook, ZipArchiveMode.Read))
        using (ZipArchive to = new(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (ZipArchiveEntry entry in from.Entries)
            {
                ZipArchiveEntry copy = to.CreateEntry(entry.FullName);
                copy.LastWriteTime = FirstTime;
                using StreamReader reader = new(entry.Open(), Encoding.UTF8);
                using StreamWriter writer = new(copy.Open(), new UTF8Encoding(false));
                writer.Write(RandomName().Replace(reader.ReadToEnd(), found => Numbered(found.Value)));
            }
        }

        return file.ToArray();

        string Numbered(string name)
        {
            if (!names.TryGetValue(name, out string? number))
            {
                names.Add(name, number = FormattableString.Invariant($"R{names.Count + 1}"));
            }

            return number;
        }
    }

    [GeneratedRegex(@"\bR[0-9a-f]{32}\b")]
    private static partial Regex RandomName();

    private static Dictionary<string, object>[] Rows(ListTable table) =>
        [.. table.Rows.Select(row => table.Columns.Zip(row).ToDictionary(cell => cell.First, cell => (object)cell.Second))];
}
