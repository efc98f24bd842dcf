namespace Sequencer.Cli.Tests;

/// <summary>Results are written whole or not at all, and nothing that is not ours is touched.</summary>
public sealed class OutputFolderTests
{
    [Fact]
    public void A_new_site_verifies_and_the_summary_lists_every_file()
    {
        using ScratchSite site = new();
        string fresh = site.Beside("fresh pit");
        ToolRun made = ToolRun.Of("new", fresh);
        Assert.Equal(0, made.ExitCode);
        Assert.Equal(2, ToolRun.Of("new", fresh).ExitCode);
        string results = site.Beside("out");
        ToolRun run = ToolRun.Of("verify", fresh, "--out", results);
        Assert.True(run.ExitCode == 0, run.Everything);
        string[] files = [.. FolderContents.Names(results).Where(name => name != ".made-by-sequencer")];
        string summary = File.ReadAllText(Path.Combine(results, "summary.txt"));
        Assert.All(files, file => Assert.Contains($"\n  {file}\n", summary, StringComparison.Ordinal));
        Assert.Equal(run.Output, summary);
        string[] expected = ["summary.txt", "summary.json", "fresh-pit.st", "certificates/H1.smt2", "trend.svg", "trend.png", "run.csv", "batch-report.md", "site-figures.md", "flow.svg", "flow.png"];
        Assert.All(expected, file => Assert.Contains(file, files));
        Assert.All(files, file => Assert.DoesNotContain(' ', file));
    }

    [Fact]
    public void The_same_site_gives_the_same_bytes_in_another_folder_and_in_the_same_again()
    {
        using ScratchSite site = new();
        string first = site.Beside("first");
        string second = site.Beside("second");
        Assert.Equal(0, ToolRun.Of("verify", site.Folder, "--out", first).ExitCode);
        Assert.Equal(0, ToolRun.Of("verify", site.Folder, "--out", second).ExitCode);
        FolderContents.SameBytes(first, second);
        Assert.Equal(0, ToolRun.Of("verify", site.Folder, "--out", first).ExitCode);
        FolderContents.SameBytes(first, second);
    }

    [Fact]
    public void A_file_that_is_not_ours_is_left_and_nothing_else_is_written()
    {
        using ScratchSite site = new();
        string results = site.Beside("out");
        Directory.CreateDirectory(results);
        File.WriteAllText(Path.Combine(results, "summary.txt"), "mine");
        ToolRun run = ToolRun.Of("export", site.Folder, "--out", results);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("was not made by an earlier run and is left as it is", run.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(results, "summary.txt")));
        Assert.Equal(["summary.txt"], FolderContents.Names(results));
    }

    [Fact]
    public void A_file_where_a_folder_of_results_is_needed_is_left_and_nothing_else_is_written()
    {
        using ScratchSite site = new();
        string results = site.Beside("out");
        Directory.CreateDirectory(results);
        File.WriteAllText(Path.Combine(results, "certificates"), "mine");
        Assert.Equal(2, ToolRun.Of("prove", site.Folder, "--out", results).ExitCode);
        Assert.Equal(["certificates"], FolderContents.Names(results));
    }

    [Fact]
    public void What_an_earlier_run_made_and_this_one_did_not_is_removed_and_the_users_files_stay()
    {
        using ScratchSite site = new();
        string results = site.Beside("out");
        Assert.Equal(0, ToolRun.Of("prove", site.Folder, "--out", results).ExitCode);
        File.WriteAllText(Path.Combine(results, "notes.txt"), "mine");
        Assert.Contains("certificates/H1.smt2", FolderContents.Names(results));
        Assert.Equal(0, ToolRun.Of("export", site.Folder, "--out", results).ExitCode);
        Assert.Equal([".made-by-sequencer", "certificates/export-PIT1.smt2", "notes.txt", "pit-alarms.csv", "pit-lists.xlsx", "pit-signals.csv", "pit.st", "summary.json", "summary.txt"], FolderContents.Names(results));
        Assert.Equal(0, ToolRun.Of("simulate", site.Folder, "--out", results).ExitCode);
        Assert.Contains("notes.txt", FolderContents.Names(results));
        Assert.False(Directory.Exists(Path.Combine(results, "certificates")));
    }

    [Fact]
    public void A_list_that_was_tampered_with_takes_nothing_outside_the_folder()
    {
        using ScratchSite site = new();
        string results = site.Beside("out");
        string outside = site.Beside("precious.txt");
        File.WriteAllText(outside, "mine");
        Directory.CreateDirectory(results);
        File.WriteAllText(Path.Combine(results, ".made-by-sequencer"), $"../precious.txt\n{outside}\nsub/../../precious.txt\n");
        Assert.Equal(0, ToolRun.Of("export", site.Folder, "--out", results).ExitCode);
        Assert.Equal("mine", File.ReadAllText(outside));
    }

    [Theory]
    [InlineData("/proc/x")]
    [InlineData("/dev/null/x")]
    [InlineData("/dev/null")]
    [InlineData("")]
    public void A_place_where_no_folder_can_be_made_is_refused(string place)
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("export", site.Folder, "--out", place);
        Assert.Equal(2, run.ExitCode);
        Assert.NotEmpty(run.Error);
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
    }
}
