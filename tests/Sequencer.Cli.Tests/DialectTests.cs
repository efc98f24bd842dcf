namespace Sequencer.Cli.Tests;

/// <summary>The options for what the standard leaves open in structured text.</summary>
public sealed class DialectTests
{
    [Fact]
    public void The_text_that_is_asked_for_is_written_proved_and_compared()
    {
        using ScratchSite site = new();
        string[] dialect = ["--edition", "second", "--states", "integer", "--longest-name", "24"];
        ToolRun run = ToolRun.Of(["export", site.Folder, "--out", site.Beside("out"), .. dialect]);
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.Contains("pit.st (second edition; states and steps as integers; names of at most 24 letters), proved equal to the program", run.Output, StringComparison.Ordinal);
        string file = Path.Combine(site.Beside("out"), "pit.st");
        Assert.Contains("(* IEC 61131-3 as asked for: second edition; states and steps as integers; names of at most 24 letters. *)", File.ReadAllText(file), StringComparison.Ordinal);

        ToolRun compared = ToolRun.Of(["export", site.Folder, "--compare", file, .. dialect]);
        Assert.True(compared.ExitCode == 0, compared.Everything);
        Assert.Contains("is proved equal to the programs", compared.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("guessed", compared.Output, StringComparison.Ordinal);

        ToolRun otherwise = ToolRun.Of("export", site.Folder, "--compare", file);
        Assert.Equal(2, otherwise.ExitCode);
        Assert.Contains(
            "says in its head that it was written in another form: second edition; states and steps as integers; names of at most 24 letters; it would be compared as: third edition; states and steps of enumerated types. "
            + "Give --compare the options --edition, --states and --longest-name that the export was given; nothing was compared",
            otherwise.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--edition", "fourth", "--edition: `fourth` is not known here; write third or second\n")]
    [InlineData("--states", "numbers", "--states: `numbers` is not known here; write enumerated or integer\n")]
    [InlineData("--longest-name", "short", "--longest-name: `short` is no number of letters; write a whole number above 0, as 32\n")]
    [InlineData("--longest-name", "0", "--longest-name: `0` is no number of letters; write a whole number above 0, as 32\n")]
    public void A_wrong_value_is_bad_usage_with_the_right_ones(string option, string value, string message)
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("export", site.Folder, "--out", site.Beside("out"), option, value);
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith(message, run.Error.Replace("\r", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.False(Directory.Exists(site.Beside("out")));
    }

    [Fact]
    public void Names_that_would_be_too_short_are_refused_with_the_least()
    {
        using ScratchSite site = new();
        foreach (string command in new[] { "export", "verify" })
        {
            ToolRun run = ToolRun.Of(command, site.Folder, "--out", site.Beside("out"), "--longest-name", "12");
            Assert.Equal(2, run.ExitCode);
            Assert.Equal("names of 12 letters are too short for this site: shorter ones could not be read; the least is 20\n", run.Error);
            Assert.False(Directory.Exists(site.Beside("out")));
        }
    }
}
