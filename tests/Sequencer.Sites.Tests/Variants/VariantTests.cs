using System.Globalization;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>
/// Programs of the demo sites with one thing broken. Who notices which is kept in a table; an ordinary run tries every
/// twelfth again, <c>tests/full variants</c> tries all. What the prover cannot decide in its time depends on the machine: the
/// ordinary run does not ask for that.
/// </summary>
public sealed class VariantTests
{
    private const int Share = 12;

    private static bool All => Environment.GetEnvironmentVariable("SEQUENCER_ALL_VARIANTS") == "1";

    public static TheoryData<string, string> Sites => new()
    {
        { "one-pit", "pit.seq" },
        { "marlpit-wharf", "reaction.seq" },
    };

    [Theory]
    [MemberData(nameof(Sites))]
    public void Broken_programs_are_noticed_as_the_table_says(string folder, string file)
    {
        VariantSite site = new(folder, file);
        int[] tried = [.. Enumerable.Range(0, site.Variants.Length).Where(index => All || index % Share == 0)];
        VariantTrial trial = new(site);
        Finding[] findings = new Finding[site.Variants.Length];
        Parallel.ForEach(tried, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, index =>
            findings[index] = trial.Of(site.Variants[index]));
        string golden = string.Create(CultureInfo.InvariantCulture, $"variants-{folder}.verified.txt");
        if (All)
        {
            GoldenFile.Matches(VariantTable.Write(site, findings), golden);
            return;
        }

        string table = GoldenFile.Accepted(golden);
        Assert.All(
            tried.Where(index => findings[index].By != Finding.Unproved),
            index => Assert.Contains(VariantTable.Line(site, site.Variants[index], findings[index]), table, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void The_table_lists_every_variant_and_explains_every_survivor(string folder, string file)
    {
        VariantSite site = new(folder, file);
        string table = GoldenFile.Accepted(string.Create(CultureInfo.InvariantCulture, $"variants-{folder}.verified.txt"));
        Assert.StartsWith(string.Create(CultureInfo.InvariantCulture, $"{site.Variants.Length} variants of {file}"), table, StringComparison.Ordinal);
        Assert.All(site.Variants, variant => Assert.Contains(variant.Name, table, StringComparison.Ordinal));
        Assert.DoesNotContain("NOT EXPLAINED", table, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void Each_part_of_the_tool_notices_some(string folder, string file)
    {
        string table = GoldenFile.Accepted(string.Create(CultureInfo.InvariantCulture, $"variants-{folder}.verified.txt"));
        string counts = table.Split('\n')[0];
        foreach (string by in new[] { Finding.Checker, Finding.Prover, Finding.Simulator })
        {
            string count = counts.Split($"{by} ")[1].Split(',')[0];
            Assert.True(int.Parse(count, CultureInfo.InvariantCulture) >= 8, $"{by} notices {count} variants of {file}");
        }
    }
}
