namespace Sequencer.StructuredText.Tests;

/// <summary>WHILE, REPEAT, EXIT, CONTINUE and RETURN: IEC 61131-3 (second edition) 3.3.2.2 and 3.3.2.4, CONTINUE third edition, from memory.</summary>
public sealed class LoopTests
{
    [Theory]
    [InlineData("WHILE N < 5 DO N := N + 2; END_WHILE;", 0, 6)]
    [InlineData("WHILE N < 5 DO N := N + 2; END_WHILE;", 5, 5)]
    [InlineData("WHILE N < 5 DO N := N + 2; END_WHILE;", 4, 6)]
    [InlineData("REPEAT N := N + 2; UNTIL N >= 5 END_REPEAT;", 0, 6)]
    [InlineData("REPEAT N := N + 2; UNTIL N >= 5 END_REPEAT;", 5, 7)]
    [InlineData("REPEAT N := N + 2; UNTIL N >= 5; END_REPEAT;", 4, 6)]
    public void A_while_asks_before_each_turn_and_a_repeat_behind_it(string loop, long start, long value)
    {
        Scans text = Scans.Of($"PROGRAM P VAR_INPUT Start : INT (0..5); END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP N : INT (0..20); END_VAR N := Start; {loop} Q := N; END_PROGRAM");
        Assert.Equal(value, text.Scan(("Start", start))["Q"]);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(3, 6)]
    [InlineData(5, 10)]
    public void An_exit_ends_the_loop_and_what_the_turn_has_left(long stop, long sum)
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT Stop : INT; END_VAR
            VAR_OUTPUT Sum : INT; END_VAR
            VAR_TEMP I : INT; END_VAR
            Sum := 0;
            FOR I := 1 TO 4 DO
              IF I > Stop THEN EXIT; END_IF;
              Sum := Sum + I;
            END_FOR;
            END_PROGRAM
            """);
        Assert.Equal(sum, text.Scan(("Stop", stop))["Sum"]);
    }

    [Fact]
    public void An_exit_ends_the_innermost_loop_only()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT Stop : INT; END_VAR
            VAR_OUTPUT Turns, Ends : INT; END_VAR
            VAR_TEMP I, J : INT; END_VAR
            Turns := 0; Ends := 0;
            FOR I := 1 TO 3 DO
              FOR J := 1 TO 3 DO
                IF J = Stop THEN EXIT; END_IF;
                Turns := Turns + 1;
              END_FOR;
              Ends := Ends + 1;
            END_FOR;
            END_PROGRAM
            """);
        text.Scan(("Stop", 2));
        Assert.Equal((3, 3), (text["Turns"], text["Ends"]));
        text.Scan(("Stop", 9));
        Assert.Equal((9, 3), (text["Turns"], text["Ends"]));
    }

    [Theory]
    [InlineData("FOR I := 1 TO 5 DO IF I = Skip THEN CONTINUE; END_IF; Q := Q + I; END_FOR;")]
    [InlineData("I := 0; WHILE I < 5 DO I := I + 1; IF I = Skip THEN CONTINUE; END_IF; Q := Q + I; END_WHILE;")]
    [InlineData("I := 0; REPEAT I := I + 1; IF I = Skip THEN CONTINUE; END_IF; Q := Q + I; UNTIL I >= 5 END_REPEAT;")]
    public void A_continue_ends_its_turn_only(string loop)
    {
        Scans text = Scans.Of($"PROGRAM P VAR_INPUT Skip : INT; END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP I : INT; END_VAR Q := 0; {loop} END_PROGRAM");
        Assert.Equal(12, text.Scan(("Skip", 3))["Q"]);
        Assert.Equal(15, text.Scan(("Skip", 6))["Q"]);
    }

    [Theory]
    [InlineData(true, false, 1)]
    [InlineData(false, true, 2)]
    [InlineData(false, false, 3)]
    public void A_return_ends_its_block_and_not_the_caller(bool first, bool second, long value)
    {
        Scans text = Scans.Of(
            """
            FUNCTION_BLOCK Chooser
            VAR_INPUT A, B : BOOL; END_VAR
            VAR_OUTPUT Value : INT; END_VAR
            IF A THEN Value := 1; RETURN; END_IF;
            IF B THEN Value := 2; RETURN; END_IF;
            Value := 3;
            END_FUNCTION_BLOCK
            PROGRAM P
            VAR_INPUT A, B : BOOL; END_VAR
            VAR_OUTPUT Q, Behind : INT; END_VAR
            VAR One : Chooser; END_VAR
            One(A := A, B := B, Value => Q);
            Behind := Q + 10;
            END_PROGRAM
            """);
        text.Scan(("A", first ? 1 : 0), ("B", second ? 1 : 0));
        Assert.Equal((value, value + 10), (text["Q"], text["Behind"]));
    }

    /// <summary>The result has a value on every way, though none of the ways gives it on all.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0b00001, 1)]
    [InlineData(0b01100, 3)]
    [InlineData(0b10000, 5)]
    public void A_function_may_return_out_of_a_loop(int full, long value)
    {
        Scans text = Scans.Of(
            """
            FUNCTION FirstFull : INT (0..5)
            VAR_INPUT Full : ARRAY [1..5] OF BOOL; END_VAR
            VAR I : INT; END_VAR
            FOR I := 1 TO 5 DO
              IF Full[I] THEN FirstFull := I; RETURN; END_IF;
            END_FOR;
            FirstFull := 0;
            END_FUNCTION
            PROGRAM P
            VAR_INPUT Full : ARRAY [1..5] OF BOOL; END_VAR
            VAR_OUTPUT Q : INT; END_VAR
            Q := FirstFull(Full);
            END_PROGRAM
            """);
        text.Scan([.. Enumerable.Range(1, 5).Select(place => ($"Full[{place}]", (long)((full >> (place - 1)) & 1)))]);
        Assert.Equal(value, text["Q"]);
    }

    [Theory]
    [InlineData("WHILE A DO Q := 1; END_WHILE;", "SEQ0728")]
    [InlineData("WHILE TRUE DO Q := 1; END_WHILE;", "SEQ0728")]
    [InlineData("REPEAT Q := 1; UNTIL A END_REPEAT;", "SEQ0728")]
    [InlineData("EXIT;", "SEQ0705")]
    [InlineData("IF A THEN CONTINUE; END_IF;", "SEQ0705")]
    [InlineData("WHILE A THEN Q := 1; END_WHILE;", "SEQ0705")]
    [InlineData("REPEAT Q := 1; END_REPEAT;", "SEQ0705")]
    [InlineData("RETURN; Q := 1;", "SEQ0743")]
    [InlineData("FOR I := 1 TO 3 DO EXIT; Q := 1; END_FOR;", "SEQ0743")]
    [InlineData("IF FALSE THEN Q := 1; END_IF;", "SEQ0743")]
    [InlineData("IF A THEN Q := 1; ELSIF B AND A THEN Q := 2; END_IF;", "SEQ0743")]
    [InlineData("CASE N OF 11: Q := 1; END_CASE;", "SEQ0743")]
    public void What_does_not_end_or_is_not_reached_is_told(string statement, string code)
    {
        ReadingResult result = Scans.Read(
            $"PROGRAM P VAR_INPUT A, B : BOOL; N : INT (0..10); END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP I : INT; END_VAR Q := 0; {statement} END_PROGRAM");
        Assert.Equal([code], result.Diagnostics.Select(diagnostic => diagnostic.Code).Distinct());
    }

    /// <summary>A branch that one turn or one call cannot take is no dead text.</summary>
    [Theory]
    [InlineData("FOR I := 1 TO 3 DO IF I = 2 THEN Q := 1; END_IF; END_FOR;")]
    [InlineData("Q := 5; IF Q = 4 THEN Q := 6; END_IF;")]
    [InlineData("CASE N OF 1: Q := 1; ELSE Q := 2; END_CASE;")]
    [InlineData("IF A THEN Q := 1; RETURN; END_IF; Q := 2;")]
    public void What_may_be_reached_is_not_told(string statement)
    {
        ReadingResult result = Scans.Read(
            $"PROGRAM P VAR_INPUT A : BOOL; N : INT (0..1); END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP I : INT; END_VAR Q := 0; {statement} END_PROGRAM");
        Assert.Empty(result.Diagnostics);
    }

    [Fact]
    public void A_timer_behind_a_return_is_called_under_its_condition()
    {
        ReadingResult result = Scans.Read(
            "PROGRAM P VAR_INPUT A : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR T1 : TON; END_VAR IF A THEN Q := FALSE; RETURN; END_IF; T1(IN := A, PT := T#1s, Q => Q); END_PROGRAM");
        Assert.Equal("SEQ0723", Assert.Single(result.Diagnostics).Code);
    }

    [Theory]
    [InlineData("IF A THEN E(CLK := B); END_IF;", 1)]
    [InlineData("IF A THEN RETURN; END_IF; E(CLK := B);", 1)]
    [InlineData("IF A THEN E(CLK := B); ELSE E(CLK := A); END_IF;", 0)]
    [InlineData("E(CLK := B);", 0)]
    public void A_block_that_some_scans_do_not_call_is_told(string statement, int warnings)
    {
        ReadingResult result = Scans.Read(
            $"PROGRAM P VAR_INPUT A, B : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR E : R_TRIG; END_VAR Q := E.Q; {statement} END_PROGRAM");
        Assert.Equal(Enumerable.Repeat("SEQ0742", warnings), result.Diagnostics.Select(diagnostic => diagnostic.Code));
        Assert.NotNull(result.System);
        Assert.All(result.Diagnostics, diagnostic => Assert.Equal("E", diagnostic.Span.Text.ToString()));
    }

    [Fact]
    public void A_temporary_that_a_return_leaves_without_a_value_cannot_be_read_behind_it()
    {
        Assert.Equal("SEQ0721", Scans.Read("PROGRAM P VAR_INPUT A : BOOL; END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP T : INT; END_VAR IF A THEN T := 1; END_IF; Q := T; END_PROGRAM").Diagnostics[0].Code);
        Assert.Empty(Scans.Read("PROGRAM P VAR_INPUT A : BOOL; END_VAR VAR_OUTPUT Q : INT; END_VAR VAR_TEMP T : INT; END_VAR Q := 0; IF A THEN T := 1; ELSE RETURN; END_IF; Q := T; END_PROGRAM").Diagnostics);
    }
}
