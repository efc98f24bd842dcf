using System.Xml.Linq;

namespace Sequencer.Cli.Tests;

/// <summary><c>--exchange</c>: the exchange file beside the structured text.</summary>
public sealed class ExchangeFileTests
{
    [Fact]
    public void It_is_written_where_it_is_asked_for_and_listed()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("export", site.Folder, "--out", site.Beside("out"), "--exchange");
        Assert.True(run.ExitCode == 0, run.Everything);
        Assert.Contains("\n  pit.xml\n", run.Output, StringComparison.Ordinal);
        XElement project = XDocument.Load(Path.Combine(site.Beside("out"), "pit.xml")).Root ?? throw new InvalidOperationException("an empty file");
        Assert.Equal("Project", project.Name.LocalName);
        Assert.Equal(["FileHeader", "ContentHeader", "Types", "Instances"], project.Elements().Select(element => element.Name.LocalName));
        Assert.Contains(project.Descendants(), element => element.Name.LocalName == "FunctionBlock" && element.Attribute("name")?.Value == "FB_PIT1");
    }

    [Fact]
    public void It_cannot_be_asked_for_where_no_text_is_written()
    {
        using ScratchSite site = new();
        ToolRun run = ToolRun.Of("export", site.Folder, "--compare", site.At("program.seq"), "--exchange");
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("--exchange: with --compare no text is written; leave one of them out\n", run.Error.Replace("\r", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
