namespace Sequencer.Cli.Tests;

/// <summary>Programs are laid out in place, whole or not at all.</summary>
public sealed class FormatTests
{
    [Fact]
    public void A_new_site_is_laid_out_already()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("format", site.Folder, "--check");
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.Equal($"as it should be: {site.Folder}/program.seq\n", run.Output);
    }

    [Fact]
    public void A_file_that_would_change_is_named_and_then_changed_once()
    {
        using ScratchSite site = new();
        string before = File.ReadAllText(site.At("program.seq"));
        site.Write("program.seq", before.Replace("    open XV1\n", "\topen   XV1 \r\n\n", StringComparison.Ordinal));
        string spoilt = File.ReadAllText(site.At("program.seq"));

        ToolRun check = ToolRun.Of("format", site.Folder, "--check");
        Assert.Equal(1, check.ExitCode);
        Assert.Equal($"would change: {site.Folder}/program.seq\n", check.Output);
        Assert.Equal(spoilt, File.ReadAllText(site.At("program.seq")));

        ToolRun run = ToolRun.Of("format", site.At("program.seq"));
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.Equal($"laid out: {site.Folder}/program.seq\n", run.Output);
        Assert.Equal(before.Replace("    open XV1\n", "    open XV1\n\n", StringComparison.Ordinal), File.ReadAllText(site.At("program.seq")));
        Assert.Equal(0, ToolRun.Of("format", site.Folder, "--check").ExitCode);
        Assert.DoesNotContain(FolderContents.Names(site.Folder), name => name.Contains("part", StringComparison.Ordinal));
    }

    [Fact]
    public void Line_ends_and_a_byte_order_mark_are_part_of_the_layout()
    {
        using ScratchSite site = new();
        byte[] before = File.ReadAllBytes(site.At("program.seq"));
        site.Write("program.seq", [0xEF, 0xBB, 0xBF, .. before.SelectMany(each => each == '\n' ? "\r\n"u8.ToArray() : [each])]);
        Assert.Equal(1, ToolRun.Of("format", site.Folder, "--check").ExitCode);
        Assert.Equal(0, ToolRun.Of("format", site.Folder).ExitCode);
        Assert.Equal(before, File.ReadAllBytes(site.At("program.seq")));
    }

    [Fact]
    public void A_file_with_mistakes_is_refused_and_left()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "    open XV1\n", "  opne XV1\n");
        string before = File.ReadAllText(site.At("program.seq"));
        ToolRun run = ToolRun.Of("format", site.Folder);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("program.seq:42:3: error SEQ0111", run.Output, StringComparison.Ordinal);
        Assert.Contains("nothing was written", run.Output, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(site.At("program.seq")));
    }

    [Fact]
    public void A_link_stays_a_link_and_what_it_leads_to_is_laid_out()
    {
        using ScratchSite site = new();
        Directory.CreateDirectory(site.At("units"));
        File.Move(site.At("program.seq"), site.At("units/pit.seq"));
        site.Replace("units/pit.seq", "    open XV1\n", "  open XV1\n");
        File.CreateSymbolicLink(site.At("program.seq"), site.At("units/pit.seq"));
        ToolRun run = ToolRun.Of("format", site.Folder);
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.NotNull(new FileInfo(site.At("program.seq")).LinkTarget);
        Assert.Contains("\n    open XV1\n", File.ReadAllText(site.At("units/pit.seq")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_reads_what_changes()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "    open XV1\n", "  open XV1\n");
        ToolRun run = ToolRun.Of("format", site.Folder, "--check", "--json");
        Assert.Equal(1, run.ExitCode);
        Assert.Equal("Fails", run.Json["outcome"]?.ToString());
        Assert.Equal($"{site.Folder}/program.seq", run.Json["changes"]?[0]?.ToString());
    }

    [Theory]
    [InlineData("there is no folder and no file `no-such-site`", "no-such-site")]
    [InlineData("the site's folder or program has no name", "")]
    public void What_is_not_there_ends_with_2(string expected, string path)
    {
        ToolRun run = ToolRun.Of("format", path);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_of_another_kind_ends_with_2()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("format", site.At("site.yaml"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("is no program; name a site's folder or a file that ends in `.seq`", run.Error, StringComparison.Ordinal);
    }
}
