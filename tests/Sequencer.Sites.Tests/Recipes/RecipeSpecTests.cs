using Sequencer.Sites.Tests.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Recipes;

/// <summary>Each block <c>yaml site-files SITE EXPECTED</c> of the specification, put into the site, gives that code and no other.</summary>
public sealed class RecipeSpecTests
{
    private const int FewestBlocks = 15;

    public static TheoryData<string, int> Blocks()
    {
        TheoryData<string, int> blocks = [];
        foreach (SpecBlock block in SpecBlock.All("site-files"))
        {
            blocks.Add(block.File, block.Line);
        }

        return blocks;
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_of_the_specification_gives_what_its_fence_says(string file, int line)
    {
        SpecBlock block = SpecBlock.All("site-files").Single(candidate => candidate.File == file && candidate.Line == line);
        using SiteWithFiles site = new SiteWithFiles(block.Words[0]).With(block.Text);
        SiteResult result = SiteCommands.Check(site.Folder);
        string codes = string.Join(' ', result.Diagnostics.Select(diagnostic => diagnostic.Code));
        Assert.True(block.Expected == (codes.Length == 0 ? "clean" : codes), DiagnosticRenderer.Render(result.Diagnostics));
    }

    [Fact]
    public void The_blocks_are_found() => Assert.True(SpecBlock.All("site-files").Count() >= FewestBlocks);
}
