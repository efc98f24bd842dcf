using Sequencer.Sites.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>Reads every scenario block of the specification; the fence says which codes it must give.</summary>
public sealed class ScenarioSpecTests
{
    private const int FewestBlocks = 10;

    public static TheoryData<string, int> Blocks()
    {
        TheoryData<string, int> blocks = [];
        foreach (SpecBlock block in SpecBlock.All("scenario"))
        {
            blocks.Add(block.File, block.Line);
        }

        return blocks;
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_of_the_specification_gives_what_its_fence_says(string file, int line)
    {
        SpecBlock block = SpecBlock.All("scenario").Single(candidate => candidate.File == file && candidate.Line == line);
        DiagnosticBag diagnostics = new();
        ScenarioReader.Read(new SourceText(file, block.Text), diagnostics);
        string codes = string.Join(' ', diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
        Assert.Equal(block.Expected, codes.Length == 0 ? "clean" : codes);
    }

    [Fact]
    public void The_blocks_are_found() => Assert.True(SpecBlock.All("scenario").Count() >= FewestBlocks);
}
