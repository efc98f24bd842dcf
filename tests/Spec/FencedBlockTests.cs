using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>
/// Every fenced block does what its fence line says. First what it is: <c>seq</c>, <c>seq units</c> (several programs), <c>seqlib NAME</c>, <c>st</c>,
/// <c>csv dose</c>, <c>csv trend</c>, <c>yaml plant</c>, <c>yaml site</c>, <c>yaml recipe</c>, <c>yaml scenario</c>, <c>yaml trials</c>. Then what reading it tells: <c>clean</c>
/// (nothing; also where a YAML block says no more) or the codes, with or without <c>error=</c>, parted by
/// commas: exactly these, as often as they are named, warnings included. <c>seq fragment</c> has lines
/// that can be read, <c>yaml fragment</c> is YAML; <c>yaml site-scenario SITE</c> is a scenario of a site,
/// <c>yaml site-files SITE</c> are files to be put into one, each under a line with its name.
/// <c>seq scans</c> is played scan by scan (Scans). The blocks of the tutorial are run in tests/Sequencer.Cli.Tests. What is no program says so: <c>text</c>, <c>sh</c>, <c>ebnf</c> and the like.
/// </summary>
public sealed partial class FencedBlockTests
{
    private static readonly string[] NoPrograms = ["text", "sh", "ebnf", "json", "csv", "smt2"];

    public static TheoryData<FencedBlock> Blocks => [.. Documents.Blocks];

    [Fact]
    public void The_documents_hold_examples() =>
        Assert.True(Documents.Blocks.Count(block => block.Tag.StartsWith("seq ", StringComparison.Ordinal)) > 60, "too few examples were found");

    [Theory]
    [MemberData(nameof(Blocks), DisableDiscoveryEnumeration = true)]
    public void A_block_does_what_its_fence_line_says(FencedBlock block)
    {
        if (block.Tag.StartsWith("tutorial ", StringComparison.Ordinal))
        {
            Assert.Equal("spec/tutorial.md", block.Path);
            return;
        }

        if (NoPrograms.Contains(block.Tag))
        {
            Assert.False(block.Text.StartsWith("language 1", StringComparison.Ordinal), $"{block} is a program; say `seq …`");
            return;
        }

        if (block.Tag == "seq scans")
        {
            Assert.Equal("spec/meaning.md", block.Path);
            return;
        }

        Match bound = SiteScenario().Match(block.Tag);
        if (bound.Success)
        {
            Assert.True(Directory.Exists(RepositoryPath.Site(bound.Groups["site"].Value)), $"{block}: no such site");
            ImmutableArray<Diagnostic> unread = BlockReaders.Read("yaml scenario", block);
            Assert.True(unread.IsEmpty, $"{block}\n{DiagnosticRenderer.Render(unread)}");
            return;
        }

        if (SiteFiles().Match(block.Tag) is { Success: true } files)
        {
            Assert.True(Directory.Exists(RepositoryPath.Site(files.Groups["site"].Value)), $"{block}: no such site");
            Assert.True(block.Text.StartsWith("# ", StringComparison.Ordinal), $"{block}: its first line names no file");
            return;
        }

        Match tag = FenceLine().Match(block.Tag);
        Assert.True(tag.Success, $"{block}: no such fence line");
        ImmutableArray<Diagnostic> found = BlockReaders.Read(tag.Groups["kind"].Value, block);
        string[] codes = [.. found.Select(diagnostic => diagnostic.Code).Order(StringComparer.Ordinal)];
        string told = DiagnosticRenderer.Render(found);
        if (tag.Groups["fragment"].Success)
        {
            Assert.False(codes.Any(code => tag.Groups["kind"].Value != "seq" || string.CompareOrdinal(code, "SEQ0120") < 0), $"{block}\n{told}");
            return;
        }

        string expected = string.Join(',', tag.Groups["codes"].Value.Split(',', StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
        Assert.True(expected == string.Join(',', codes), $"{block}: expected {(expected.Length == 0 ? "nothing" : expected)}\n{told}");
    }

    [GeneratedRegex(@"^(?<kind>seq|seq units|seqlib(?= )|st|csv dose|csv trend|yaml|yaml plant|yaml site|yaml recipe|yaml scenario|yaml trials)((?<=seqlib) [a-z/-]+\.seqlib)?( ((?<clean>clean)|(?<fragment>fragment)|(error=)?(?<codes>SEQ\d{4}(,SEQ\d{4})*))|(?<=^yaml \w+))$")]
    private static partial Regex FenceLine();

    /// <summary>What such blocks tell when they are tied to their site is tested in tests/Sequencer.Sites.Tests.</summary>
    [GeneratedRegex(@"^yaml site-files (?<site>[a-z-]+) (clean|SEQ\d{4})$")]
    private static partial Regex SiteFiles();

    [GeneratedRegex(@"^yaml site-scenario (?<site>[a-z-]+) (clean|SEQ\d{4})$")]
    private static partial Regex SiteScenario();
}
