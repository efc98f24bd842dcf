using System.Text;

namespace Sequencer.StructuredText.Tests;

/// <summary>Whatever the text, the answer is diagnostics or a system, in bounded time: no exception, no stack used up.</summary>
public sealed class RobustnessTests
{
    private const int Turns = 1500;

    [Fact]
    public void Damaged_text_never_throws()
    {
        string[] texts = [.. Directory.GetFiles(SpecificationPages.DiagnosticsFolder, "SEQ07*.md")
            .Where(page => !page.EndsWith("SEQ0735.md", StringComparison.Ordinal))
            .SelectMany(SpecificationPages.Blocks).Select(block => block.Text)];
        Assert.True(texts.Length > 60, "the pages are found");
        Random random = new(20240705);
        for (int turn = 0; turn < Turns; turn++)
        {
            string text = Damage(texts[random.Next(texts.Length)], texts[random.Next(texts.Length)], random);
            ReadingResult result = Scans.Read(text);
            Assert.True(result.System is not null || !result.Diagnostics.IsEmpty, text);
        }
    }

    /// <summary>Words in no order at all, in declarations and in a body.</summary>
    [Fact]
    public void Any_row_of_words_is_answered()
    {
        string[] words =
        [
            "IF", "THEN", "ELSE", "ELSIF", "END_IF", "CASE", "OF", "END_CASE", "FOR", "TO", "BY", "DO", "END_FOR", "WHILE", "END_WHILE", "REPEAT", "UNTIL",
            "END_REPEAT", "EXIT", "CONTINUE", "RETURN", "VAR", "VAR_INPUT", "VAR_OUTPUT", "VAR_IN_OUT", "VAR_TEMP", "RETAIN", "CONSTANT", "AT", "END_VAR",
            "TYPE", "STRUCT", "END_STRUCT", "ARRAY", "END_TYPE", "FUNCTION", "FUNCTION_BLOCK", "PROGRAM", "END_PROGRAM", "NOT", "AND", "OR", "XOR", "MOD",
            "BOOL", "INT", "REAL", "STRING", "TIME", "TON", "R_TRIG", "X", "Y", "A", "Q", "B", "1", "3", "-", "16#FF", "1.5", "T#5s", "'s'", "D#2024-01-01",
            "%IX0.0", "TRUE", "INT#", ":=", "=>", ";", ";", ";", ":", ",", "(", ")", "[", "]", "..", ".", "+", "*", "**", "/", "=", "<", ">=", "&", "LIMIT", "SEL",
        ];
        Random random = new(3310);
        for (int turn = 0; turn < Turns; turn++)
        {
            string row = string.Join(' ', Enumerable.Range(0, random.Next(1, 60)).Select(_ => words[random.Next(words.Length)]));
            string text = turn % 2 == 0
                ? $"PROGRAM P VAR_INPUT X : INT (0..9); A : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR Y : ARRAY [0..3] OF INT; B : R_TRIG; END_VAR {row} END_PROGRAM"
                : row;
            ReadingResult result = Scans.Read(text);
            Assert.True(result.System is not null || !result.Diagnostics.IsEmpty, text);
        }
    }

    [Theory]
    [InlineData("(", ")", 100_000)]
    [InlineData("-(", ")", 100_000)]
    [InlineData("NOT (", ")", 100_000)]
    [InlineData("ABS(", ")", 100_000)]
    [InlineData("(", "", 100_000)]
    [InlineData("X[", "]", 100_000)]
    public void Deep_brackets_are_refused_and_do_no_harm(string open, string close, int depth)
    {
        string text = $"PROGRAM P VAR_OUTPUT Q : DINT; END_VAR Q := {Repeat(open, depth)}1{Repeat(close, depth)}; END_PROGRAM";
        Assert.Equal("SEQ0707", Scans.Read(text).Diagnostics[0].Code);
    }

    [Theory]
    [InlineData("IF A THEN ", "END_IF; ")]
    [InlineData("CASE N OF 1: ", "END_CASE; ")]
    [InlineData("FOR I := 1 TO 1 DO ", "END_FOR; ")]
    [InlineData("WHILE A DO ", "END_WHILE; ")]
    [InlineData("REPEAT ", "UNTIL A END_REPEAT; ")]
    public void Deep_statements_are_refused_and_do_no_harm(string open, string close)
    {
        string text = $"PROGRAM P VAR_INPUT A : BOOL; N : INT; END_VAR VAR I : INT; END_VAR {Repeat(open, 50_000)}{Repeat(close, 50_000)} END_PROGRAM";
        Assert.Equal("SEQ0707", Scans.Read(text).Diagnostics[0].Code);
    }

    [Theory]
    [InlineData("X : ", "ARRAY [0..1] OF ", "INT;")]
    [InlineData("X : ", "STRUCT A : ", "")]
    [InlineData("X : INT := ", "[", "")]
    [InlineData("X : INT := ", "(A := ", "")]
    public void Deep_types_and_values_are_refused_and_do_no_harm(string before, string open, string behind) =>
        Assert.Equal("SEQ0707", Scans.Read($"PROGRAM P VAR {before}{Repeat(open, 50_000)}{behind} END_VAR END_PROGRAM").Diagnostics[0].Code);

    /// <summary>Loops in loops, each with as many turns as may be: the limit of statements ends them.</summary>
    [Theory]
    [InlineData("FOR I := 1 TO 1000 DO FOR J := 1 TO 1000 DO Q := NOT Q; END_FOR; END_FOR;", "SEQ0735")]
    [InlineData("WHILE A DO WHILE NOT B DO Q := NOT Q; END_WHILE; END_WHILE;", "SEQ0728")]
    [InlineData("REPEAT REPEAT Q := NOT Q; UNTIL A END_REPEAT; UNTIL B END_REPEAT;", "SEQ0728")]
    public void Loops_in_loops_end(string loops, string code) =>
        Assert.Equal(code, Scans.Read($"PROGRAM P VAR_INPUT A, B : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR I, J : INT; END_VAR {loops} END_PROGRAM").Diagnostics[0].Code);

    [Fact]
    public void A_long_chain_of_operators_is_read()
    {
        string text = $"PROGRAM P VAR_INPUT A : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR Q := A{Repeat(" OR A", 20_000)}; END_PROGRAM";
        Assert.Equal(1, Scans.Of(text).Scan(("A", 1))["Q"]);
    }

    [Fact]
    public void A_long_chain_of_branches_is_read()
    {
        StringBuilder text = new("PROGRAM P VAR_INPUT N : INT; END_VAR VAR_OUTPUT Q : INT; END_VAR IF N = 0 THEN Q := 0;\n");
        for (int branch = 1; branch < 1000; branch++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"ELSIF N = {branch} THEN Q := {branch};\n");
        }

        text.Append("END_IF; END_PROGRAM");
        Assert.Equal(777, Scans.Of(text.ToString()).Scan(("N", 777))["Q"]);
    }

    private static string Repeat(string text, int times) => new StringBuilder().Insert(0, text, times).ToString();

    private static string Damage(string text, string other, Random random)
    {
        int changes = random.Next(1, 4);
        for (int change = 0; change < changes; change++)
        {
            int at = random.Next(text.Length + 1);
            int length = random.Next(0, Math.Min(12, text.Length - at) + 1);
            int from = random.Next(other.Length + 1);
            string piece = other.Substring(from, random.Next(0, Math.Min(12, other.Length - from) + 1));
            text = random.Next(3) switch
            {
                0 => text.Remove(at, length),
                1 => text.Insert(at, piece),
                _ => text.Remove(at, length).Insert(at, piece),
            };
        }

        return text;
    }
}
