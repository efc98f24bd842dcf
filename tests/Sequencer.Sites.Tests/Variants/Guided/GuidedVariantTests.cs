using System.Collections.Concurrent;
using System.Globalization;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// The prover judged by random runs, on the four demo sites and on their variants. An ordinary run takes the sites and a few variants
/// with another seed than the table's; <c>tests/full variants</c> takes all of the tables with more scans.
/// </summary>
public sealed class GuidedVariantTests
{
    private const long Scans = 500_000;
    private const long ScansOfAll = 10_000_000;
    private const int Sample = 12;
    private const int Fewest = 200;

    private static readonly ConcurrentDictionary<string, Lazy<GuidedTrial>> Trials = new(StringComparer.Ordinal);

    private static bool All => Environment.GetEnvironmentVariable("SEQUENCER_ALL_VARIANTS") == "1";

    /// <summary>Fewer scans may be asked for where all are tried in haste; the table says how many there were.</summary>
    private static long ScansEach => !All ? Scans
        : long.TryParse(Environment.GetEnvironmentVariable("SEQUENCER_GUIDED_SCANS"), CultureInfo.InvariantCulture, out long asked) ? asked : ScansOfAll;

    public static TheoryData<string> Sites => [.. SiteFiles.All.Select(site => site.Folder)];

    [Theory]
    [MemberData(nameof(Sites))]
    public void What_holds_of_a_site_is_broken_by_no_random_run(string folder)
    {
        GuidedResult result = TrialOf(folder).OfUnbroken(seed: 1);
        Assert.Empty(result.Broken.Select(one => $"{one.Requirement.Name} in scan {one.Scan} of seed {result.Seed}"));
        Assert.True(3 * result.Reached >= result.Goals, $"the runs reach {result.Reached} of {result.Goals} steps and transitions only");
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void What_the_prover_says_of_a_variant_no_random_run_belies(string folder)
    {
        SiteFiles site = SiteFiles.Of(folder);
        GuidedTrial trial = TrialOf(folder);
        if (All)
        {
            trial.ProveUnbroken();
        }

        (string File, Variant Variant)[] judged = [.. site.Judged.Where((_, place) => All || place % Sample == 0)];
        Judgement[] judgements = new Judgement[judged.Length];
        string report = Path.Combine(AppContext.BaseDirectory, $"guided-{folder}.txt");
        File.Delete(report);
        Parallel.For(0, judged.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, place =>
        {
            (string file, Variant variant) = judged[place];
            judgements[place] = trial.Of(file, variant, All ? place : Sample + place, isWhole: All);
            lock (judgements)
            {
                File.AppendAllText(report, $"{judgements[place].Class}\n{JudgementTable.Line(file, variant, judgements[place])}\n");
            }
        });

        Assert.Empty(judged.Zip(judgements).SelectMany(pair => pair.Second.Disagreements.Select(one => $"{pair.First.File}: {pair.First.Variant.Name}: {one}")));
        if (All)
        {
            GoldenFile.Matches(JudgementTable.Write(site, ScansEach, judgements), Golden(folder));
            return;
        }

        string table = GoldenFile.Accepted(Golden(folder));
        Assert.All(judged.Zip(judgements), pair =>
        {
            string? known = JudgementTable.ClassOf(table, pair.First.File, pair.First.Variant);
            Assert.Equal(known == Judgement.Refused, pair.Second.Class == Judgement.Refused);
            Assert.False(known is Judgement.Proved or Judgement.Same && pair.Second.Class == Judgement.Broken, $"the table has it as proved: {pair.First.Variant.Name}");
        });
    }

    [Fact]
    public void The_tables_list_every_variant_that_is_judged_and_they_are_many()
    {
        foreach (SiteFiles site in SiteFiles.All)
        {
            string table = GoldenFile.Accepted(Golden(site.Folder));
            Assert.All(site.Judged, pair => Assert.NotNull(JudgementTable.ClassOf(table, pair.File, pair.Variant)));
        }

        Assert.True(SiteFiles.All.Sum(site => site.Judged.Length) >= Fewest);
    }

    private static GuidedTrial TrialOf(string folder) =>
        Trials.GetOrAdd(folder, static name => new Lazy<GuidedTrial>(() => new GuidedTrial(SiteFiles.Of(name), ScansEach))).Value;

    private static string Golden(string folder) => $"guided-{folder}.verified.txt";
}
