using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Export.Lists;

/// <summary>A list for people who work with spreadsheets: columns, and rows with a text for each of them.</summary>
public sealed record ListTable(string Name, ImmutableArray<string> Columns, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>File and line, as <c>pit.seq:14</c>.</summary>
    internal static string Place(SourceSpan span, string root)
    {
        string path = span.Written.Source.Path;
        return string.Create(CultureInfo.InvariantCulture, $"{(path.StartsWith(root, StringComparison.Ordinal) ? path[root.Length..] : path)}:{span.Start.Line}");
    }
}
