using Sequencer.Sites.Stages;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>The pages of the small site, as a person reads them.</summary>
public sealed class InsightPageTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("insight");

    [Fact]
    public void The_pages_of_the_small_site_are_as_accepted()
    {
        string site = RepositoryPath.At("tests", "Sequencer.Testing", "Sites", "one-pit");
        SiteResult result = SiteCommands.Prove(site, _folder.FullName, ProofSettings.Default with { Insight = true }, new Silence(), CancellationToken.None);
        Assert.Equal(Outcome.Holds, result.Outcome);
        string[] pages = [.. result.Files.Where(file => file.StartsWith("insight/", StringComparison.Ordinal) && file.EndsWith(".md", StringComparison.Ordinal))];
        Assert.NotEmpty(pages);
        foreach (string page in pages)
        {
            string text = File.ReadAllText(Path.Combine(_folder.FullName, page));
            Assert.Contains("IEC 61511", text, StringComparison.Ordinal);
            GoldenFile.Matches(text, Path.GetFileNameWithoutExtension(page) + ".verified.md");
        }

        // The run in which a failed instrument is told beside what it ought to show.
        GoldenFile.Matches(File.ReadAllText(Path.Combine(_folder.FullName, "insight/runs/LSHH301-sticks-and-says-no.txt")), "LSHH301-sticks-and-says-no.verified.txt");
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private sealed class Silence : IProgress<StageProgress>
    {
        public void Report(StageProgress value)
        {
        }
    }
}
