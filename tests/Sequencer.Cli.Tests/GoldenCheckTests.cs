using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>What a user reads, and what a machine reads, of a site with several mistakes.</summary>
public sealed class GoldenCheckTests
{
    [Theory]
    [InlineData("several-mistakes.verified.txt")]
    [InlineData("several-mistakes.verified.json", "--json")]
    public void A_site_with_several_mistakes(string golden, params string[] options)
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "open XV1\n", "open XV9\n");
        site.Replace("program.seq", "limit 2 h", "limit 2 m3");
        site.Replace("program.seq", "go finish", "go 99");
        site.Replace("plant.yaml", "area: 0.80 m2", "aera: 0.80 m2");
        site.Replace("scenarios/normal-batch.yaml", "lasts: 4 h", "lasts: 4 weeks");
        site.Replace("site.yaml", "met_by: [H1]", "met_by: [H1], open: soon");
        ToolRun run = ToolRun.Of(["check", site.Folder, .. options]);
        Assert.Equal(1, run.ExitCode);
        GoldenFile.Matches(run.Output.Replace(site.Folder, "pit", StringComparison.Ordinal), golden);
    }
}
