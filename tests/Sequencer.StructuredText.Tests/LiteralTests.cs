using Sequencer.StructuredText.Parsing;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Tests;

/// <summary>IEC 61131-3 (second edition) Tables 2, 4, 5, 6 and 7.</summary>
public sealed class LiteralTests
{
    [Theory]
    [InlineData("T#14ms", 14)]
    [InlineData("T#-14ms", -14)]
    [InlineData("T#14.7s", 14_700)]
    [InlineData("T#14.7m", 882_000)]
    [InlineData("T#14.7h", 52_920_000)]
    [InlineData("t#14.7d", 1_270_080_000)]
    [InlineData("T#25h15m", 90_900_000)]
    [InlineData("TIME#25h_15m", 90_900_000)]
    [InlineData("t#25h_15m", 90_900_000)]
    [InlineData("t#5d14h12m18s3.5ms", 483_138_003.5)]
    [InlineData("LTIME#1m_30s", 90_000)]
    public void A_duration_is_exact(string text, double milliseconds)
    {
        DurationLiteralSyntax literal = Assert.IsType<DurationLiteralSyntax>(Parse(text));
        Assert.Equal((decimal)milliseconds, literal.Milliseconds);
    }

    [Theory]
    [InlineData("T#5")]
    [InlineData("T#")]
    [InlineData("T#5x")]
    [InlineData("T#1m90s")]
    [InlineData("T#5s1m")]
    [InlineData("T#1.5m30s")]
    [InlineData("T#5.s")]
    public void A_duration_without_unit_or_order_is_refused(string text) => Assert.Equal("SEQ0703", Code(text));

    [Theory]
    [InlineData("-12", -12)]
    [InlineData("0", 0)]
    [InlineData("123_456", 123_456)]
    [InlineData("+986", 986)]
    [InlineData("2#1111_1111", 255)]
    [InlineData("8#377", 255)]
    [InlineData("16#FF", 255)]
    [InlineData("16#ff", 255)]
    [InlineData("INT#5", 5)]
    [InlineData("DINT#16#7FFF_FFFF", 2147483647)]
    [InlineData("UINT#2#1000", 8)]
    [InlineData("SINT#-128", -128)]
    public void An_integer_in_any_base_is_its_number(string text, long value)
    {
        Assert.Equal(value, ExpressionTests.Value(text));
    }

    [Theory]
    [InlineData("12__3")]
    [InlineData("12_")]
    [InlineData("2#102")]
    [InlineData("7#1")]
    [InlineData("16#")]
    [InlineData("12ab")]
    [InlineData("99999999999999999999")]
    [InlineData("1.")]
    [InlineData("1.5x")]
    public void A_malformed_number_is_refused(string text) => Assert.Equal("SEQ0703", Code(text));

    [Fact]
    public void A_point_without_a_digit_before_it_is_refused() => Assert.Equal("SEQ0705", Code(".5"));

    [Theory]
    [InlineData("0.0")]
    [InlineData("12.0E6")]
    [InlineData("3.14159_26")]
    public void A_real_number_is_known_and_does_not_fit_an_integer(string text) => Assert.Equal("SEQ0714", Code(text));

    [Theory]
    [InlineData("D#1984-06-25")]
    [InlineData("TOD#15:36:55.36")]
    [InlineData("DT#1984-06-25-15:36:55.36")]
    [InlineData("'text'")]
    [InlineData("'a quote $' inside'")]
    [InlineData("STRING#'text'")]
    public void Dates_and_strings_are_known_and_are_no_numbers(string text) => Assert.Equal("SEQ0713", Code(text));

    /// <summary>IEC 61131-3 (second edition) Tables 5, 8 and 9, from memory.</summary>
    [Theory]
    [InlineData("D#1984-13-25")]
    [InlineData("D#1984-02-30")]
    [InlineData("TOD#15:66:55")]
    [InlineData("DT#1984-06-25")]
    [InlineData("'text")]
    [InlineData("'text$'")]
    public void A_malformed_date_or_string_is_refused(string text) => Assert.Equal("SEQ0703", Code(text));

    [Theory]
    [InlineData("INT#40000")]
    [InlineData("USINT#256")]
    [InlineData("SINT#-129")]
    public void A_typed_literal_outside_its_type_is_refused(string text) => Assert.Equal("SEQ0715", Code(text));

    [Theory]
    [InlineData("LIM_SW_5")]
    [InlineData("_MAIN")]
    [InlineData("_12V7")]
    [InlineData("Name9")]
    public void Letters_digits_and_single_underscores_make_a_name(string name) => Assert.Empty(Declaring(name));

    [Theory]
    [InlineData("A__B")]
    [InlineData("A_")]
    public void Two_underscores_or_one_at_the_end_make_none(string name) => Assert.Equal("SEQ0704", Declaring(name)[0].Code);

    [Fact]
    public void Names_that_differ_only_in_case_are_the_same()
    {
        Scans text = Scans.Of("PROGRAM P VAR_INPUT fOO : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR q := Foo; END_PROGRAM");
        Assert.Equal(1, text.Scan(("fOO", 1))["Q"]);
    }

    [Fact]
    public void Every_reserved_word_is_refused_as_a_name()
    {
        string[] words = [.. ReservedWords.Keywords, .. ReservedWords.TypeNames, .. ReservedWords.StandardNames];
        Assert.True(words.Length > 150, "the list of words is read");
        string[] sections = ["VAR_INPUT", "VAR_OUTPUT", "VAR_IN_OUT", "VAR_TEMP", "VAR_EXTERNAL", "VAR_GLOBAL", "VAR", "END_VAR"];
        foreach (string word in words.Except(sections).Except(["TYPE", "FUNCTION", "FUNCTION_BLOCK", "PROGRAM", "CONFIGURATION", "END_TYPE", "END_FUNCTION", "END_FUNCTION_BLOCK", "END_PROGRAM"]))
        {
            Diagnostic first = Declaring(word.ToLowerInvariant())[0];
            Assert.True(first.Code == "SEQ0706", $"{word}: {DiagnosticRenderer.Render(first)}");
        }
    }

    [Fact]
    public void Comments_of_all_three_kinds_are_passed_over()
    {
        Scans text = Scans.Of(
            """
            (* a block
               of lines *) PROGRAM P // to the end of the line
            VAR_OUTPUT Q : BOOL; END_VAR /* another
            block */
            Q := (* TRUE *) TRUE; // END_PROGRAM
            END_PROGRAM
            """);
        Assert.Equal(1, text.Scan()["Q"]);
    }

    private static ExpressionSyntax Parse(string expression)
    {
        DiagnosticBag diagnostics = new();
        SourceFileSyntax file = StructuredTextParser.Parse(new SourceText("test.st", $"PROGRAM P\nx := {expression};\nEND_PROGRAM"), diagnostics);
        Assert.Empty(diagnostics.InOrder());
        return ((AssignmentSyntax)((UnitSyntax)file.Declarations[0]).Body[0]).Value;
    }

    private static string Code(string expression) =>
        Scans.Read($"PROGRAM P VAR_OUTPUT x : DINT; END_VAR\nx := {expression};\nEND_PROGRAM").Diagnostics[0].Code;

    private static List<Diagnostic> Declaring(string name) =>
        [.. Scans.Read($"PROGRAM P VAR first : BOOL; {name} : BOOL; END_VAR\nEND_PROGRAM").Diagnostics];
}
