using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Sequencer.Export.Tests.Writing;

/// <summary>Every block has a head that tells where it comes from and what it holds, and an edit elsewhere leaves both alone.</summary>
public sealed partial class BlockHeadTests
{
    [Fact]
    public void The_hash_of_a_head_is_that_of_the_lines_below_it()
    {
        Dictionary<string, (string Head, string Block)> blocks = Blocks(SiteExport.Of(SiteExport.First, SiteExport.Second));

        Assert.Equal(["Scaling", "SCAN_MONITOR", "FB_A", "FB_B", "UNITS_TOGETHER", "PLANT_PROGRAM", "Plant"], blocks.Keys);
        Assert.All(blocks.Values, block =>
        {
            string content = block.Block[..^1];
            Assert.Contains($"the {content.Count(letter => letter == '\n')} lines below this head *)\n(*           sha-256 {Hash(content)} *)", block.Head, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_head_names_file_lines_revision_and_where_each_clause_stands()
    {
        string head = Blocks(SiteExport.Of(SiteExport.First, SiteExport.Second))["FB_A"].Head;
        Assert.Contains($"program1.seq, lines 1 to 13 *)\n(*           sha-256 {Hash(SiteExport.First)} *)", head, StringComparison.Ordinal);
        Assert.Contains("revision  A", head, StringComparison.Ordinal);
        Assert.Contains("program1.seq: 3 LT1, 4 S1, 5 P1, 6 SC1, 7 I1, 9 step 10", head, StringComparison.Ordinal);
    }

    /// <summary>A limit of one unit is another: its head and its lines change, and nothing else.</summary>
    [Fact]
    public void An_edit_in_one_unit_leaves_all_other_blocks_as_they_are()
    {
        Dictionary<string, (string Head, string Block)> before = Blocks(SiteExport.Of(SiteExport.First, SiteExport.Second));
        Dictionary<string, (string Head, string Block)> after = Blocks(SiteExport.Of(
            SiteExport.First, SiteExport.Second.Replace("limit 10 s", "limit 20 s", StringComparison.Ordinal)));

        Assert.Equal(["FB_B"], before.Where(block => after[block.Key] != block.Value).Select(block => block.Key));
        string[] lines = [.. after["FB_B"].Block.Split('\n').Except(before["FB_B"].Block.Split('\n'))];
        Assert.All(lines, line => Assert.Matches("Step10_Clock|^\\(\\* step 10: limit 20 s ", line));
        Assert.InRange(lines.Length, 2, 6);
    }

    /// <summary>A remark of one more line moves all clauses behind it: the head says so, the block stays.</summary>
    [Fact]
    public void A_line_put_in_changes_the_head_alone()
    {
        Dictionary<string, (string Head, string Block)> before = Blocks(SiteExport.Of(SiteExport.First, SiteExport.Second));
        Dictionary<string, (string Head, string Block)> after = Blocks(SiteExport.Of(
            SiteExport.First.Replace("unit A", "-- a remark\nunit A", StringComparison.Ordinal), SiteExport.Second));

        Assert.Equal(["FB_A"], before.Where(block => after[block.Key] != block.Value).Select(block => block.Key));
        Assert.Equal(before["FB_A"].Block, after["FB_A"].Block);
        Assert.Contains("4 LT1", after["FB_A"].Head, StringComparison.Ordinal);
    }

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>Head and block by the first word of the title.</summary>
    private static Dictionary<string, (string Head, string Block)> Blocks(string text)
    {
        string[] parts = Ruler().Split(text);
        return Enumerable.Range(0, (parts.Length - 1) / 2).ToDictionary(
            index => parts[(2 * index) + 1].Split(' ')[1], index => (parts[(2 * index) + 1], parts[(2 * index) + 2]));
    }

    [GeneratedRegex(@"^\(\* =+ \*\)\n", RegexOptions.Multiline)]
    private static partial Regex Ruler();
}
