namespace Sequencer.Plant.Chemistry;

/// <summary>The tables that come inside this assembly: rows of cells parted by bars, comments from #.</summary>
internal static class DataTable
{
    public static string Text(string fileName)
    {
        using Stream stream = typeof(DataTable).Assembly.GetManifestResourceStream($"Chemistry.{fileName}")
            ?? throw new InvalidOperationException($"the assembly holds no table {fileName}");
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }

    /// <summary>The rows of a table's text; their lines are trimmed and not empty.</summary>
    public static IEnumerable<string> Rows(string text) =>
        text.Split('\n', StringSplitOptions.TrimEntries).Where(line => line.Length > 0 && line[0] != '#');

    public static string[] Cells(string row) => row.Split('|', StringSplitOptions.TrimEntries);
}
