using System.Text.RegularExpressions;
using Sequencer.Testing;

namespace Sequencer.StructuredText.Tests;

/// <summary>The fenced blocks of a page whose fence begins with <c>st</c>, with what their fence line expects.</summary>
internal static partial class SpecificationPages
{
    public static IEnumerable<(string Expected, string Text)> Blocks(string path) =>
        Fence().Matches(File.ReadAllText(path)).Select(match => (match.Groups[1].Value, match.Groups[2].Value));

    public static string DiagnosticsFolder => RepositoryPath.At("spec", "diagnostics");

    public static string Subset => RepositoryPath.At("spec", "structured-text.md");

    [GeneratedRegex("^```st (.+)\n((?:.*\n)*?)```$", RegexOptions.Multiline)]
    private static partial Regex Fence();
}
