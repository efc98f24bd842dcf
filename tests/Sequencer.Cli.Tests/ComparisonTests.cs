namespace Sequencer.Cli.Tests;

/// <summary><c>export --compare</c>: a text edited by hand, from the command line.</summary>
public sealed class ComparisonTests
{
    [Fact]
    public void An_edited_text_is_told_equal_different_or_unreadable()
    {
        using ScratchSite site = new();
        Assert.Equal(0, ToolRun.Of("export", site.Folder, "--out", site.Beside("out")).ExitCode);
        string text = File.ReadAllText(Path.Combine(site.Beside("out"), "pit.st"));
        string edited = site.Beside("edited.st");

        string commented = text.Replace("(* ", "(* reviewed: ", StringComparison.Ordinal);
        File.WriteAllText(edited, commented.Replace("AG1_Last := AG1;", "AG1_Last := AG1;\nIF FALSE THEN AG1_Last := FALSE; END_IF;", StringComparison.Ordinal));
        ToolRun equal = ToolRun.Of("export", site.Folder, "--compare", edited);
        Assert.True(equal.ExitCode == 0, equal.Everything);
        Assert.Contains("edited.st is proved equal to the programs", equal.Output, StringComparison.Ordinal);
        Assert.Matches(@"warning SEQ0743: this is never reached; \S*edited\.st:\d+:\d+: IF FALSE THEN", equal.Output);

        File.WriteAllText(edited, text.Replace("AG1_Last := AG1;", "AG1_Last := NOT AG1;", StringComparison.Ordinal));
        ToolRun different = ToolRun.Of("export", site.Folder, "--compare", edited);
        Assert.True(different.ExitCode == 1, different.Everything);
        Assert.Contains("differs first in scan 1,", different.Output, StringComparison.Ordinal);
        Assert.Contains("AG1_Last := NOT AG1;", different.Output, StringComparison.Ordinal);
        Assert.Contains("program.seq:", different.Output, StringComparison.Ordinal);

        const string coil = "DO_AG1 := ";
        Assert.Contains(coil, text, StringComparison.Ordinal);
        File.WriteAllText(edited, text.Replace(coil, coil + "NOT ", StringComparison.Ordinal));
        ToolRun miswired = ToolRun.Of("export", site.Folder, "--compare", edited);
        Assert.True(miswired.ExitCode == 1, miswired.Everything);
        Assert.Contains("edited.st does not do what the programs do", miswired.Output, StringComparison.Ordinal);
        Assert.Matches(@"`AG1` \(\S*program\.seq:\d+:\d+\): .* the text drives it when it is off", miswired.Output);

        File.WriteAllText(edited, text.Replace("AG1_Last := AG1;", "AG1_Last = AG1;", StringComparison.Ordinal));
        string results = site.Beside("compared");
        ToolRun unreadable = ToolRun.Of("export", site.Folder, "--compare", edited, "--out", results);
        Assert.True(unreadable.ExitCode == 2, unreadable.Everything);
        Assert.Matches(@"edited\.st:\d+:\d+: error SEQ07", unreadable.Error);
        Assert.False(Directory.Exists(results));
    }

    [Fact]
    public void A_file_that_is_not_there_is_told()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("export", site.Folder, "--compare", site.Beside("none.st"));
        Assert.True(run.ExitCode == 2, run.Everything);
        Assert.Contains("none.st` cannot be read", run.Error, StringComparison.Ordinal);
    }
}
