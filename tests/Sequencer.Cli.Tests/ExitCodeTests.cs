namespace Sequencer.Cli.Tests;

/// <summary>0 all holds, 1 mistakes or failures, 2 could not be done, 3 undecided.</summary>
public sealed class ExitCodeTests
{
    [Theory]
    [InlineData("no command was given")]
    [InlineData("did you mean `check`", "chekc", "somewhere")]
    [InlineData("there is no command `paint`", "paint")]
    [InlineData("Option '--out' is required", "verify", "somewhere")]
    [InlineData("Option '--out' is required", "export", "somewhere")]
    [InlineData("Required argument missing", "check")]
    [InlineData("'b'", "check", "a", "b")]
    [InlineData("there is no folder `no-such-site`", "check", "no-such-site")]
    [InlineData("the site's folder has no name", "check", "")]
    [InlineData("the new site's folder has no name", "new", "")]
    public void Bad_usage_is_told_on_standard_error_and_ends_with_2(string expected, params string[] arguments)
    {
        ToolRun run = ToolRun.Of(arguments);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.True(run.Error.Split('\n').Length < 6, run.Error);
    }

    [Fact]
    public void Help_and_version_end_with_0()
    {
        Assert.Equal(0, ToolRun.Of("--help").ExitCode);
        Assert.Equal(0, ToolRun.Of("check", "--help").ExitCode);
        Assert.Equal(0, ToolRun.Of("--version").ExitCode);
    }

    /// <summary>As a shell completes a folder's name.</summary>
    [Fact]
    public void A_slash_behind_the_site_means_nothing()
    {
        using ScratchSite site = new();
        Assert.Equal(0, ToolRun.Of("check", site.Folder + "/").ExitCode);
    }

    [Fact]
    public void A_file_in_place_of_the_site_is_told_and_ends_with_2()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("check", site.At("site.yaml"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("is a file; name the site's folder", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Mistakes_end_with_1_in_every_command_and_nothing_is_written()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "open XV1", "open XV9");
        string results = site.Beside("out");
        string[][] commands = [["check"], ["prove"], ["verify", "--out", results], ["simulate", "--out", results], ["export", "--out", results]];
        foreach (string[] command in commands)
        {
            ToolRun run = ToolRun.Of([command[0], site.Folder, .. command[1..]]);
            Assert.Equal(1, run.ExitCode);
            Assert.Contains("XV9", run.Output, StringComparison.Ordinal);
        }

        Assert.False(Directory.Exists(results));
    }

    [Fact]
    public void A_requirement_that_fails_ends_with_1_and_shows_its_trace()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "interlock I3 \"Not while filling\"    XV2  blocked while XV1\n", "");
        site.Replace("program.seq", "open XV2\n", "open XV2\n    open XV1\n");
        string results = site.Beside("out");
        ToolRun run = ToolRun.Of("prove", site.Folder, "--out", results);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("FAILS     H3", run.Output, StringComparison.Ordinal);
        Assert.Contains("is broken", File.ReadAllText(Path.Combine(results, "traces", "H3.txt")), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(results, "certificates", "H3.smt2")));
    }

    [Fact]
    public void An_expectation_that_fails_ends_with_1()
    {
        using ScratchSite site = new();
        site.Replace("scenarios/normal-batch.yaml", "ends: Complete", "ends: Aborted");
        ToolRun run = ToolRun.Of("simulate", site.Folder, "--out", site.Beside("out"));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("NOT AS EXPECTED  normal batch", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scenario_that_does_not_fit_the_site_is_a_mistake_that_check_finds()
    {
        using ScratchSite site = new();
        site.Replace("scenarios/normal-batch.yaml", "P1.total", "P9.total");
        ToolRun run = ToolRun.Of("check", site.Folder);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("scenarios/normal-batch.yaml:12:13: error SEQ0610", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_site_without_a_scenario_is_undecided_and_ends_with_3()
    {
        using ScratchSite site = new();
        Directory.Delete(site.At("scenarios"), recursive: true);
        ToolRun run = ToolRun.Of("simulate", site.Folder, "--out", site.Beside("out"));
        Assert.Equal(3, run.ExitCode);
        Assert.Contains("the site has no scenario", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scenario_is_played_by_its_name_and_an_unknown_one_is_refused_with_the_known_ones()
    {
        using ScratchSite site = new();
        string results = site.Beside("out");
        ToolRun unknown = ToolRun.Of("simulate", site.Folder, "--out", results, "--scenario", "storm");
        Assert.Equal(2, unknown.ExitCode);
        Assert.Contains("no scenario `storm`; it has `normal batch`", unknown.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(results));
        Assert.Equal(0, ToolRun.Of("simulate", site.Folder, "--out", results, "--scenario", "normal batch").ExitCode);
        Assert.Contains("run.csv", FolderContents.Names(results));
    }
}
