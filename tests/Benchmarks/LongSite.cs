using System.Text.RegularExpressions;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>A valid site of as many units as asked for, each a long program with tags and addresses of its own.</summary>
internal static partial class LongSite
{
    /// <param name="lines">Of all units together.</param>
    /// <param name="units">How many.</param>
    public static SourceText[] Of(int lines, int units)
    {
        string program = LongProgram.Of(File.ReadAllText(RepositoryPath.At("src", "Sequencer.Sites", "Template", "program.seq")), lines / units);
        return [.. Enumerable.Range(0, units).Select(unit => Unit(program, unit))];
    }

    private static SourceText Unit(string program, int unit) => new(
        FormattableString.Invariant($"unit{unit}.seq"),
        Address().Replace(Tag().Replace(program, match => FormattableString.Invariant($"{match.Value}{unit:00}")), match => FormattableString.Invariant($"{match.Groups[1].Value}{unit + 1}{match.Groups[2].Value}")));

    [GeneratedRegex(@"\b(PIT|LT|AT|LSHH|ES|YS|XV|AG|P)\d\b")]
    private static partial Regex Tag();

    [GeneratedRegex(@"(%[IQ][XW])(\d)")]
    private static partial Regex Address();
}
