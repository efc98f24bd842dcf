using System.Text;

namespace Sequencer.Cli.Tests;

/// <summary>What can be mended in one way only is mended in the files, each whole, and nothing else in them changes.</summary>
public sealed class MendTests
{
    private static readonly byte[] Mark = [0xEF, 0xBB, 0xBF];

    [Fact]
    public void Slips_are_mended_in_place_and_shown()
    {
        using ScratchSite site = new();
        string sound = File.ReadAllText(site.At("program.seq")).Replace("\n", "\r\n", StringComparison.Ordinal);
        string spoilt = sound.Replace("    open XV1", "    opne XV01 -- the inlet", StringComparison.Ordinal).Replace("language 1\r\n", "", StringComparison.Ordinal);
        Assert.NotEqual(sound, spoilt);
        site.Write("program.seq", [.. Mark, .. Encoding.UTF8.GetBytes(spoilt)]);

        ToolRun checkedOnly = ToolRun.Of("check", site.Folder);
        Assert.Equal(1, checkedOnly.ExitCode);
        Assert.Contains("`check --mend` does it: replace `opne` with `open`", checkedOnly.Output, StringComparison.Ordinal);
        Assert.Equal(Encoding.UTF8.GetBytes(spoilt), File.ReadAllBytes(site.At("program.seq"))[3..]);

        ToolRun first = ToolRun.Of("check", site.Folder, "--mend");
        Assert.StartsWith($"mended: {site.Folder}/program.seq\n  line 1:1: put the line `language 1` before everything else (SEQ0121)\n", first.Output, StringComparison.Ordinal);
        Assert.Equal(1, first.ExitCode);

        ToolRun second = ToolRun.Of("check", site.Folder, "--mend");
        Assert.Contains("replace `XV01` with `XV1` (SEQ0201)", second.Output, StringComparison.Ordinal);
        Assert.True(second.ExitCode == 0, second.Everything);
        string mended = sound.Replace("    open XV1", "    open XV1 -- the inlet", StringComparison.Ordinal);
        Assert.Equal([.. Mark, .. Encoding.UTF8.GetBytes(mended)], File.ReadAllBytes(site.At("program.seq")));

        ToolRun third = ToolRun.Of("check", site.Folder, "--mend");
        Assert.StartsWith("there is nothing here that can be mended without asking\n", third.Output, StringComparison.Ordinal);
        Assert.Equal([site.At("program.seq")], Directory.EnumerateFiles(site.Folder, "program*"));
    }

    [Fact]
    public void What_needs_a_decision_is_left_alone()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "    open XV1\n", "    open XV9\n");
        byte[] before = File.ReadAllBytes(site.At("program.seq"));
        ToolRun run = ToolRun.Of("check", site.Folder, "--mend", "--json");
        Assert.Equal(1, run.ExitCode);
        Assert.Empty(run.Json["mended"]!.AsArray());
        Assert.Equal(before, File.ReadAllBytes(site.At("program.seq")));
    }

    [Fact]
    public void A_file_that_a_link_leads_to_outside_the_site_is_not_touched()
    {
        using ScratchSite site = new();
        string outside = site.Beside("program.seq");
        site.Replace("program.seq", "    open XV1\n", "    opne XV1\n");
        File.Move(site.At("program.seq"), outside);
        File.CreateSymbolicLink(site.At("program.seq"), outside);
        byte[] before = File.ReadAllBytes(outside);
        ToolRun run = ToolRun.Of("check", site.Folder, "--mend");
        Assert.Equal(1, run.ExitCode);
        Assert.Equal(before, File.ReadAllBytes(outside));
    }
}
