using System.Text;
using MiniExcelLibs;
using MiniExcelLibs.Csv;
using MiniExcelLibs.OpenXml;

namespace Sequencer.Export.Lists;

/// <summary>Lists as comma-separated text (RFC 4180) and as a workbook (ISO/IEC 29500); the library names the parts of a workbook anew each time, so only the cells are the same for the same lists.</summary>
public static class ListFiles
{
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
        return file.ToArray();
    }

    private static Dictionary<string, object>[] Rows(ListTable table) =>
        [.. table.Rows.Select(row => table.Columns.Zip(row).ToDictionary(cell => cell.First, cell => (object)cell.Second))];
}
