namespace Sequencer.Text.Tests;

public sealed class DiagnosticRendererTests
{
    private static readonly string Long = new string('a', 200) + "HERE" + new string('b', 200);

    [Fact]
    public void A_short_line_is_shown_whole_with_a_marker_under_the_span()
    {
        string[] lines = Render("open XV9", 5, 3);
        Assert.Equal("  1 | open XV9", lines[1]);
        Assert.Equal("    |      ^^^", lines[2]);
    }

    [Fact]
    public void A_tab_keeps_the_marker_under_the_span()
    {
        string[] lines = Render("\topen XV9", 6, 3);
        Assert.Equal("    | \t     ^^^", lines[2]);
    }

    [Fact]
    public void A_line_cut_on_both_sides_says_so_and_the_marker_stays_under_the_span()
    {
        string[] lines = Render(Long, 200, 4);
        Assert.StartsWith("  1 | ...a", lines[1], StringComparison.Ordinal);
        Assert.EndsWith("b...", lines[1], StringComparison.Ordinal);
        Assert.Equal("HERE", lines[1].Substring(lines[2].IndexOf('^', StringComparison.Ordinal), lines[2].Count(character => character == '^')));
    }

    [Fact]
    public void A_line_cut_at_its_end_only_says_so_there_only()
    {
        string line = Render(Long, 0, 4)[1];
        Assert.StartsWith("  1 | aaaa", line, StringComparison.Ordinal);
        Assert.EndsWith("a...", line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_cut_at_its_start_only_says_so_there_only()
    {
        string[] lines = Render(Long, 400, 4);
        Assert.StartsWith("  1 | ...", lines[1], StringComparison.Ordinal);
        Assert.EndsWith("bbbb", lines[1], StringComparison.Ordinal);
        Assert.Equal(lines[1].Length, lines[2].Length);
    }

    private static string[] Render(string text, int start, int length) => DiagnosticRenderer.Render(
        new Diagnostic("SEQ0000", Severity.Error, new SourceText("a.seq", text).At(start, length), "message", "reason", "mend")).Split('\n');
}
