using System.Text.RegularExpressions;
using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>
/// Every fenced block does what its fence line says: <c>seq clean</c>, <c>seq error=CODE[,CODE]</c>
/// (exactly these codes, as often as they are named, warnings included), <c>seq fragment</c> (lines that
/// can be read), or is no program: <c>text</c>, <c>sh</c>, <c>ebnf</c>.
/// </summary>
public sealed partial class FencedBlockTests
{
    private const int ScanMilliseconds = 100;
    private static readonly string[] NoPrograms = ["text", "sh", "ebnf", "json", "csv", "smt2", "iecst"];

    public static TheoryData<FencedBlock> Blocks => [.. Documents.Blocks];

    [Fact]
    public void The_documents_hold_examples() => Assert.True(Documents.Blocks.Count(block => block.Tag.StartsWith("seq ", StringComparison.Ordinal)) > 60, "too few examples were found");

    [Theory]
    [MemberData(nameof(Blocks), DisableDiscoveryEnumeration = true)]
    public void A_block_does_what_its_fence_line_says(FencedBlock block)
    {
        if (NoPrograms.Contains(block.Tag))
        {
            Assert.False(block.Text.StartsWith("language 1", StringComparison.Ordinal), $"{block} is a program; say `seq …`");
            return;
        }

        if (block.Tag.StartsWith("yaml ", StringComparison.Ordinal))
        {
            YamlBlocks.Check(block);
            return;
        }

        CheckResult result = ProgramChecker.Check(new SourceText(block.Path, block.Text), ScanMilliseconds);
        string told = DiagnosticRenderer.Render(result.Diagnostics);
        IEnumerable<string> codes = result.Diagnostics.Select(found => found.Code).Order(StringComparer.Ordinal);
        if (block.Tag == "seq fragment")
        {
            Assert.False(codes.Any(code => code.StartsWith("SEQ01", StringComparison.Ordinal) && string.CompareOrdinal(code, "SEQ0120") < 0), $"{block}\n{told}");
            return;
        }

        Match tag = Expectation().Match(block.Tag);
        Assert.True(tag.Success, $"{block}: no such fence line");
        string expected = string.Join(',', tag.Groups["codes"].Value.Split(',', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
        Assert.True(expected == string.Join(',', codes), $"{block}: expected {(expected.Length == 0 ? "nothing" : expected)}\n{told}");
    }

    [GeneratedRegex(@"^seq (clean|error=(?<codes>SEQ\d{4}(,SEQ\d{4})*))$")]
    private static partial Regex Expectation();
}
