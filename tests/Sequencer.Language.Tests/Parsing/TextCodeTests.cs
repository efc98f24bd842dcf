using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Parsing;

public sealed class TextCodeTests
{
    [Theory]
    [InlineData("SEQ0103", "alarm A1", "alarm A1 \"Level«\u0007» high\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0103", "alarm A1", "alarm A1 \"Level high\" when LT1 > 5.000 m3 -- turned «\u202e» round")]
    [InlineData("SEQ0103", "alarm A1", "alarm A1 \"Level high\" «\0»when LT1 > 5.000 m3")]
    [InlineData("SEQ0104", "alarm A1", "alarm A1 «\"Level high when LT1 > 5.000 m3»")]
    [InlineData("SEQ0105", "alarm A1", "alarm A1 \"Level high\" when «(»LT1 > 5.000 m3 or LSHH1")]
    [InlineData("SEQ0106", "alarm A1", "alarm A1 \"Level high\" when LT1 > 5.000 m3«)»")]
    [InlineData("SEQ0109", "alarm A1", "alarm A1 \"Level high\" when LT1 «≥» 5.000 m3")]
    [InlineData("SEQ0109", "alarm A1", "alarm A1 \"Level high\" when LT1 > 5.000 m3«;»")]
    [InlineData("SEQ0110", "alarm A1", "alarm A1 \"Level high\" when LT1 > 5.000 m3 «YS1»")]
    [InlineData("SEQ0110", "alarm A1", "alarm A1 \"Level high\" when LT1 >«»")]
    [InlineData("SEQ0110", "    limit 30 min then hold", "    limit 30 «then» hold \"Filling slow\"")]
    [InlineData("SEQ0110", "alarm A1", "alarm «held» \"Level high\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0110", "trip E1", "trip E1 \"High-high\" when LSHH1 then «emergancy»")]
    [InlineData("SEQ0111", "    expect 12 min", "    «exepct» 12 min")]
    [InlineData("SEQ0111", "    expect 12 min", "    «12» min")]
    [InlineData("SEQ0113", "    expect 12 min", "    expect «1e999» min")]
    [InlineData("SEQ0113", "    expect 12 min", "    expect «12min»")]
    [InlineData("SEQ0114", "    expect 12 min", "    expect «1234567890123456» min")]
    [InlineData("SEQ0116", "input LT1", "input LT1 0 .. 6.000 m3 at %IW0 \"Volume\" bad after 2 s, «bad after» 3 s")]
    public void A_broken_line_is_told_once_at_its_exact_place(string code, string replaced, string line) =>
        MarkedProgram.Replacing(replaced.TrimStart(), line).ReportsOnly(code);

    [Fact]
    public void Brackets_nested_too_deep_are_told_at_the_first_one_too_many() => MarkedProgram.Replacing(
        "alarm A1",
        $"alarm A1 \"Level high\" when {new string('(', 64)}«(»{new string('(', 20_000)}LSHH1{new string(')', 20_065)}").ReportsOnly("SEQ0107");

    [Fact]
    public void Sixty_four_brackets_are_read() => Assert.Empty(MarkedProgram.Replacing(
        "alarm A1", $"alarm A1 \"Level high\" when {new string('(', 64)}LSHH1{new string(')', 64)}").Check());

    [Fact]
    public void A_statement_of_more_than_8000_characters_is_told() => MarkedProgram.Replacing(
        "alarm A1", $"«alarm A1 \"{new string('x', 8_000)}\" when LSHH1»").ReportsOnly("SEQ0108");

    [Fact]
    public void A_chain_of_denials_is_bounded() => MarkedProgram.Replacing(
        "alarm A1", $"alarm A1 \"Level high\" when «{string.Concat(Enumerable.Repeat("not ", 300))}LSHH1»").ReportsOnly("SEQ0115");

    [Fact]
    public void A_long_sum_is_bounded() => MarkedProgram.Replacing(
        "alarm A1", $"alarm A1 \"Level high\" when «LT1{string.Concat(Enumerable.Repeat(" + LT1", 300))} > 5.000 m3»").ReportsOnly("SEQ0115");

    [Theory]
    [InlineData("    expect 12 min", "    exepct 12 min", "did you mean `expect`?")]
    [InlineData("trip E1", "trip E1 \"High-high\" when LSHH1 then emergancy", "did you mean `emergency`?")]
    [InlineData("alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3 stay 2 s", "did you mean `stays`?")]
    [InlineData("output XV1", "output XV1 valve at %QX0.0 \"Inlet\" save closed", "did you mean `safe`?")]
    [InlineData("    expect 12 min", "    expect 12 mins", "did you mean `min`?")]
    [InlineData("    stop P1", "    stop P3", "declare `P3`")]
    public void A_misspelling_with_one_near_word_is_recognised(string replaced, string line, string mend)
    {
        Text.Diagnostic only = Assert.Single(MarkedProgram.Replacing(replaced.TrimStart(), line).Check());
        Assert.Contains(mend, only.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("    limit 30 min then hold", "    limit then hold \"x\"", "expected a time such as `20 s`, found the keyword `then`")]
    [InlineData("    limit 30 min then hold", "    limit 30 min then \"x\"", "expected a reaction (`alarm`, `hold`, `stop`, `abort` or `emergency`) or `go`, found a text")]
    [InlineData("alarm A1", "alarm A1 \"High\" when", "expected a name, a number or `(`, found the end of the line")]
    [InlineData("    go finish", "    go 20, when LSHH1", "expected `and` or `when`, found `,`")]
    [InlineData("    limit 30 min then hold", "    limit 30 then hold \"x\"", "expected a unit of time such as `min`, found the keyword `then`")]
    public void What_was_expected_is_said_in_plain_words(string replaced, string line, string message)
    {
        Text.Diagnostic only = Assert.Single(MarkedProgram.Replacing(replaced.TrimStart(), line).Check());
        Assert.Equal(message, only.Message);
    }
}
