using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary><c>sequencer tune</c> on the small site: from the record of its own normal batch, and from trends that cannot be used.</summary>
public sealed class TuneTests
{
    private static readonly string OnePit = RepositoryPath.Site("one-pit");

    [Fact]
    public void A_run_record_gives_dead_time_lag_and_a_change_to_review()
    {
        using ScratchSite site = new();
        ToolRun played = ToolRun.Of("simulate", OnePit, "--scenario", "normal-batch", "--out", site.Beside("run"));
        Assert.True(played.ExitCode == 0, played.Everything);
        ToolRun tuned = ToolRun.Of("tune", OnePit, Path.Combine(site.Beside("run"), "run.csv"), "--out", site.Beside("tuned"));
        Assert.True(tuned.ExitCode == 0, tuned.Everything);
        Assert.Matches(@"dead time \d+\.\d s \(standard error \d+\.\d\), lag \d+\.\d s", tuned.Output);
        Assert.NotEmpty(Directory.EnumerateFiles(site.Beside("tuned"), "*.png"));
        string diff = Path.Combine(site.Beside("tuned"), "proposed.diff");
        Assert.Equal(tuned.Output.Contains(" -> ", StringComparison.Ordinal), File.Exists(diff));
    }

    [Theory]
    [InlineData("AT1 pH\n7\n", "SEQ0860")]
    [InlineData("time s,AT1 pH\n0,7\n0,7\n", "SEQ0862")]
    public void A_trend_that_cannot_be_read_is_told_with_its_place(string text, string code)
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllText(file, text);
        ToolRun run = ToolRun.Of("tune", OnePit, file, "--out", site.Beside("tuned"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(code, run.Error, StringComparison.Ordinal);
        Assert.Contains("trend.csv:", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(site.Beside("tuned")));
    }

    [Fact]
    public void A_trend_without_the_columns_of_a_dose_leaves_it_undecided()
    {
        using ScratchSite site = new();
        string file = site.Beside("trend.csv");
        File.WriteAllText(file, "time s,X1\n0,1\n1,0\n");
        ToolRun run = ToolRun.Of("tune", OnePit, file);
        Assert.Equal(3, run.ExitCode);
        Assert.Contains("the trend says nothing of any dose of the site", run.Output, StringComparison.Ordinal);
        Assert.Contains("no column", run.Output, StringComparison.Ordinal);
    }
}
