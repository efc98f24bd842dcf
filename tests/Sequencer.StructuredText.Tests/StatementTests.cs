using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Tests;

public sealed class StatementTests
{
    [Theory]
    [InlineData(0, 9)]
    [InlineData(1, 10)]
    [InlineData(3, 20)]
    [InlineData(5, 20)]
    [InlineData(7, 30)]
    [InlineData(-2, 40)]
    public void A_case_does_the_first_branch_that_matches(long selector, long value)
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT S : INT; END_VAR
            VAR_OUTPUT Q : INT; END_VAR
            CASE S OF
              1: Q := 10;
              3..5: Q := 20;
              6, 7, 8..9: Q := 30;
              -3..-1: Q := 40;
            ELSE Q := 9;
            END_CASE;
            END_PROGRAM
            """);
        Assert.Equal(value, text.Scan(("S", selector))["Q"]);
    }

    [Fact]
    public void Of_two_branches_with_one_value_the_first_is_done()
    {
        ReadingResult result = Scans.Read(
            "PROGRAM P VAR_INPUT S : INT; END_VAR VAR_OUTPUT Q : INT; END_VAR CASE S OF 1..3: Q := 1; 2: Q := 2; END_CASE; END_PROGRAM");
        Assert.Equal(["SEQ0729"], result.Diagnostics.Select(diagnostic => diagnostic.Code));
        Assert.NotNull(result.System);
    }

    [Theory]
    [InlineData("FOR I := 1 TO 5 DO Q := Q + I; END_FOR;", 15)]
    [InlineData("FOR I := 5 TO 1 DO Q := Q + I; END_FOR;", 0)]
    [InlineData("FOR I := 10 TO 1 BY -3 DO Q := Q + I; END_FOR;", 22)]
    [InlineData("FOR I := 1 TO 10 BY 4 DO Q := Q + I; END_FOR;", 15)]
    [InlineData("FOR I := 3 TO 3 DO Q := Q + 1; END_FOR;", 1)]
    public void A_for_takes_its_bounds_once_and_ends_behind_the_last(string loop, long value)
    {
        Scans text = Scans.Of($"PROGRAM P VAR_OUTPUT Q : INT; END_VAR VAR_TEMP I : INT; END_VAR Q := 0; {loop} END_PROGRAM");
        Assert.Equal(value, text.Scan()["Q"]);
    }

    [Theory]
    [InlineData("FOR I := 1 TO 5 DO I := 2; END_FOR;", "SEQ0716")]
    [InlineData("FOR I := 1 TO 5 BY 0 DO Q := 1; END_FOR;", "SEQ0728")]
    [InlineData("FOR I := 1 TO 5 DO Q := 1; END_FOR; Q := I;", "SEQ0721")]
    public void A_for_whose_end_or_variable_is_in_doubt_is_refused(string loop, string code)
    {
        ReadingResult result = Scans.Read($"PROGRAM P VAR_OUTPUT Q : INT; END_VAR VAR_TEMP I : INT; END_VAR Q := 0; {loop} END_PROGRAM");
        Assert.Equal([code], result.Diagnostics.Select(diagnostic => diagnostic.Code).Distinct());
    }

    [Fact]
    public void A_variable_that_is_not_assigned_on_a_way_keeps_its_value()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT A : BOOL; B : BOOL; END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            IF A THEN Q := TRUE; ELSIF B THEN Q := FALSE; END_IF;
            END_PROGRAM
            """);
        Assert.Equal("0111001", text.Row("Q", ("A", "0100001"), ("B", "0000110")));
        Assert.Equal("Q.last", Assert.Single(text.System.States).Variable.Name);
    }

    [Fact]
    public void A_value_assigned_before_it_is_read_is_no_state()
    {
        Scans text = Scans.Of(
            "PROGRAM P VAR_INPUT A : BOOL; END_VAR VAR_OUTPUT Q : BOOL; END_VAR VAR Between : BOOL; END_VAR Between := NOT A; Q := Between; END_PROGRAM");
        Assert.Empty(text.System.States);
        Assert.Equal("Between", Assert.Single(text.System.Definitions).Name);
    }

    [Fact]
    public void A_return_of_power_forgets_what_is_not_retained_before_the_scan()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT A : BOOL; END_VAR
            VAR_OUTPUT SeenKept : BOOL; SeenLost : BOOL; END_VAR
            VAR RETAIN Kept : BOOL; END_VAR
            VAR Lost : BOOL; END_VAR
            SeenKept := Kept;
            SeenLost := Lost;
            Kept := Kept OR A;
            Lost := Lost OR A;
            END_PROGRAM
            """);
        text.Scan(("A", 1)).Scan(("A", 0));
        Assert.Equal((1, 1), (text["SeenKept"], text["SeenLost"]));
        text.Scan(("power.returned", 1));
        Assert.Equal((1, 0), (text["SeenKept"], text["SeenLost"]));
        text.Scan(("power.returned", 0));
        Assert.Equal((1, 0), (text["SeenKept"], text["SeenLost"]));
    }

    [Fact]
    public void Blocks_keep_their_own_memory_and_inputs_that_are_not_given()
    {
        Scans text = Scans.Of(
            """
            FUNCTION_BLOCK COUNTER
            VAR_INPUT Up : BOOL; Most : INT (0..100) := 2; END_VAR
            VAR_OUTPUT Value : INT (0..100); END_VAR
            IF Up AND Value < Most THEN Value := Value + 1; END_IF;
            END_FUNCTION_BLOCK
            PROGRAM P
            VAR_INPUT A : BOOL; B : BOOL; END_VAR
            VAR_OUTPUT First : INT; Second : INT; END_VAR
            VAR C1 : COUNTER; C2 : COUNTER := (Most := 5); END_VAR
            C1(Up := A);
            C2(Up := B, Value => Second);
            First := C1.Value;
            END_PROGRAM
            """);
        for (int scan = 0; scan < 9; scan++)
        {
            text.Scan(("A", 1), ("B", 1));
        }

        Assert.Equal((2, 5), (text["First"], text["Second"]));
        Assert.Equal(["C1.Most", "C1.Value", "C2.Most", "C2.Value"], text.System.States.Select(state => state.Variable.Name));
    }

    [Fact]
    public void An_in_out_is_the_variable_of_the_caller()
    {
        Scans text = Scans.Of(
            """
            FUNCTION_BLOCK ADDER
            VAR_IN_OUT Total : INT (0..1000); END_VAR
            VAR_INPUT Given : INT (0..10); END_VAR
            IF Total + Given <= 1000 THEN Total := Total + Given; END_IF;
            END_FUNCTION_BLOCK
            PROGRAM P
            VAR_INPUT X : INT (0..10); END_VAR
            VAR_OUTPUT Q : INT; END_VAR
            VAR RETAIN Sum : INT (0..1000); END_VAR
            VAR A : ADDER; B : ADDER; END_VAR
            A(Total := Sum, Given := X);
            B(Total := Sum, Given := 1);
            Q := Sum;
            END_PROGRAM
            """);
        text.Scan(("X", 4)).Scan();
        Assert.Equal(10, text["Q"]);
    }

    [Fact]
    public void A_function_gives_its_own_name_s_value()
    {
        Scans text = Scans.Of(
            """
            FUNCTION SCALED : INT
            VAR_INPUT Raw : INT; END_VAR
            VAR Whole : INT; END_VAR
            Whole := LIMIT(0, Raw, 10000);
            SCALED := Whole / 10;
            END_FUNCTION
            PROGRAM P
            VAR_INPUT X : INT; END_VAR
            VAR_OUTPUT Q : INT; END_VAR
            Q := SCALED(X) + SCALED(Raw := 50);
            END_PROGRAM
            """);
        Assert.Equal(128, text.Scan(("X", 1234))["Q"]);
        Assert.Equal(1005, text.Scan(("X", 32767))["Q"]);
        Assert.Equal(5, text.Scan(("X", -7))["Q"]);
    }

    [Fact]
    public void A_function_that_calls_itself_is_refused()
    {
        ReadingResult result = Scans.Read(
            "FUNCTION F : INT VAR_INPUT X : INT; END_VAR F := F(X); END_FUNCTION PROGRAM P VAR_OUTPUT Q : INT; END_VAR Q := F(1); END_PROGRAM");
        Assert.Contains("SEQ0727", result.Diagnostics.Select(diagnostic => diagnostic.Code));
    }

    [Fact]
    public void A_guard_on_the_way_proves_the_range()
    {
        Assert.Empty(Scans.Read("PROGRAM P VAR A : INT; B : INT; END_VAR IF A < B AND B < 100 THEN A := A + 1; END_IF; END_PROGRAM").Diagnostics);
        Assert.Empty(Scans.Read("PROGRAM P VAR A : UINT; B : UINT; END_VAR IF A <= B THEN B := B - A; END_IF; END_PROGRAM").Diagnostics);
        Assert.Empty(Scans.Read("PROGRAM P VAR A : INT; END_VAR IF A >= 32767 THEN A := 0; ELSE A := A + 1; END_IF; END_PROGRAM").Diagnostics);
        Assert.Empty(Scans.Read("PROGRAM P VAR A : INT; END_VAR IF A <> 32767 THEN A := A + 1; END_IF; END_PROGRAM").Diagnostics);
        Assert.Empty(Scans.Read("PROGRAM P VAR A : INT; END_VAR A := MIN(A, 99) + 1; END_PROGRAM").Diagnostics);
        Assert.Equal("SEQ0718", Scans.Read("PROGRAM P VAR A : INT; END_VAR IF A <= 32767 THEN A := A + 1; END_IF; END_PROGRAM").Diagnostics[0].Code);
        Assert.Equal("SEQ0718", Scans.Read("PROGRAM P VAR A : UINT; B : UINT; END_VAR IF A <= B THEN A := A - B; END_IF; END_PROGRAM").Diagnostics[0].Code);
        Assert.Equal("SEQ0718", Scans.Read("PROGRAM P VAR A : INT; B : BOOL; END_VAR IF A < 5 OR B THEN A := A + 1; END_IF; END_PROGRAM").Diagnostics[0].Code);
    }

    [Fact]
    public void Another_name_for_a_type_is_the_type_with_its_own_initial_value()
    {
        Scans text = Scans.Of(
            """
            TYPE
              FLAG : BOOL := TRUE;
              STATE : (Idle, Running) := Running;
              VOLUME : INT (0..100) := 50;
            END_TYPE
            PROGRAM P
            VAR State1 : STATE; Flag1 : FLAG; Volume1 : VOLUME; END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            Q := Flag1 AND State1 = Running AND State1 <> STATE#Idle AND Volume1 + 1 = 51;
            END_PROGRAM
            """);
        Assert.Equal(1, text.Scan()["Q"]);
    }

    [Fact]
    public void A_block_that_nothing_runs_is_checked_too()
    {
        ReadingResult result = Scans.Read(
            """
            FUNCTION_BLOCK Spare
            VAR_INPUT A : BOOL; END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            Q := B;
            END_FUNCTION_BLOCK
            PROGRAM P
            END_PROGRAM
            """);
        Assert.Equal("SEQ0710", Assert.Single(result.Diagnostics).Code);
    }

    [Fact]
    public void A_marker_that_is_never_assigned_is_an_input()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR FillVolume AT %MW10 : INT (3000..5000); Count AT %MW11 : INT (0..9); END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            Q := FillVolume > 4000;
            IF Count < 9 THEN Count := Count + 1; END_IF;
            END_PROGRAM
            """);
        Assert.Equal(["power.returned", "FillVolume"], text.System.Inputs.Select(input => input.Name));
        Assert.Equal(new IntegerRange(3000, 5000), text.System.Inputs[1].Range);
        Assert.Equal(1, text.Scan(("FillVolume", 4500))["Q"]);
    }

    [Fact]
    public void The_period_of_the_task_counts_the_scans_of_a_timer()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_EXTERNAL A : BOOL; Q : BOOL; END_VAR
            VAR T1 : TON; END_VAR
            T1(IN := A, PT := T#1s, Q => Q);
            END_PROGRAM
            CONFIGURATION Plant
              VAR_GLOBAL A AT %IX0.0 : BOOL; Q AT %QX0.0 : BOOL; END_VAR
              RESOURCE Controller ON CPU
                TASK Scan(INTERVAL := T#250ms, PRIORITY := 1);
                PROGRAM Main WITH Scan : P;
              END_RESOURCE
            END_CONFIGURATION
            """,
            scanMilliseconds: 77);
        Assert.Equal(250, text.System.ScanMilliseconds);
        Assert.Equal("000011", text.Row("Q", ("A", "111111")));
    }
}
