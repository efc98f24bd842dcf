namespace Sequencer.StructuredText.Tests;

/// <summary>Numbers with a decimal point, strings and dates: read and carried; what would depend on one is refused.</summary>
public sealed class OpaqueTests
{
    [Theory]
    [InlineData("R := R * 1.5 + INT_TO_REAL(N) / 2 - ABS(R);")]
    [InlineData("R := SQRT(R) + MAX(R, 1.0E-3);")]
    [InlineData("L := R; L := LREAL#1.5 * L; R := REAL#2 ** 2.0;")]
    [InlineData("R := N;")]
    [InlineData("S := 'it$'s full'; S := STRING#'x';")]
    [InlineData("D := D#2024-02-29; Clock := TOD#23:59:59.5; Moment := DT#2024-02-29-12:00:00;")]
    public void They_may_be_calculated_and_kept(string statement) => Assert.Empty(Read(statement));

    [Theory]
    [InlineData("Q := R > 1.0;", "SEQ0739")]
    [InlineData("Q := R = 1.0;", "SEQ0741")]
    [InlineData("Q := L <> R;", "SEQ0741")]
    [InlineData("Q := N = 1.0;", "SEQ0741")]
    [InlineData("I := REAL_TO_INT(R);", "SEQ0739")]
    [InlineData("I := R;", "SEQ0714")]
    [InlineData("R := L;", "SEQ0714")]
    [InlineData("Q := S = 'x';", "SEQ0739")]
    [InlineData("S := 5;", "SEQ0713")]
    [InlineData("D := TOD#12:00:00;", "SEQ0713")]
    [InlineData("R := S;", "SEQ0713")]
    [InlineData("Q := R;", "SEQ0713")]
    public void Nothing_may_depend_on_one(string statement, string code) => Assert.Equal(code, Read(statement)[0]);

    [Fact]
    public void An_output_of_such_a_type_cannot_be_compared() =>
        Assert.Equal("SEQ0739", Assert.Single(Scans.Read("PROGRAM P VAR_OUTPUT Q : REAL; END_VAR Q := 1.5; END_PROGRAM").Diagnostics).Code);

    [Fact]
    public void They_are_no_part_of_the_system()
    {
        Scans text = Scans.Of("PROGRAM P VAR_INPUT X : REAL; A : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR R : REAL; END_VAR R := R + X; Q := A; END_PROGRAM");
        Assert.Equal(["power.returned", "A"], text.System.Inputs.Select(input => input.Name));
        Assert.Empty(text.System.States);
        Assert.Empty(text.System.Definitions);
    }

    /// <summary>Third edition, from memory: LINT and LTIME.</summary>
    [Fact]
    public void Numbers_of_64_bits_need_bounds_and_long_times_none()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT X : INT; END_VAR
            VAR_OUTPUT Q : LINT (-1000000000000..1000000000000); Long : BOOL; END_VAR
            VAR T1 : LTIME; END_VAR
            Q := INT_TO_LINT(X) * 10000000;
            T1 := LT#30d + LT#5s500ms;
            Long := T1 > LTIME#29d;
            END_PROGRAM
            """);
        Assert.Equal((327_670_000_000, 1), (text.Scan(("X", 32767))["Q"], text["Long"]));
        Assert.Equal("SEQ0738", Scans.Read("PROGRAM P VAR T1 : LTIME; END_VAR T1 := LT#1us; END_PROGRAM").Diagnostics[0].Code);
        Assert.Equal("SEQ0714", Scans.Read("PROGRAM P VAR T1 : LTIME; T2 : TIME; END_VAR T2 := T1; END_PROGRAM").Diagnostics[0].Code);
    }

    private static List<string> Read(string statement) =>
        [.. Scans.Read(
            $"""
            PROGRAM P
            VAR_INPUT N : INT; END_VAR
            VAR_OUTPUT Q : BOOL; I : INT; END_VAR
            VAR R : REAL := 1.5; L : LREAL; S : STRING[80] := 'none'; D : DATE; Clock : TIME_OF_DAY; Moment : DATE_AND_TIME; END_VAR
            Q := FALSE; I := 0;
            {statement}
            END_PROGRAM
            """).Diagnostics.Select(diagnostic => diagnostic.Code)];
}
