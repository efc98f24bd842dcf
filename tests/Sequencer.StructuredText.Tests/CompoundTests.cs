namespace Sequencer.StructuredText.Tests;

/// <summary>Arrays and structures, IEC 61131-3 (second edition) 2.3.3 and 2.4.1.2, from memory.</summary>
public sealed class CompoundTests
{
    [Fact]
    public void An_index_from_outside_chooses_what_is_read_and_written()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT Which : INT (1..4); New : INT; END_VAR
            VAR_OUTPUT Q, First, Last : INT; END_VAR
            VAR Kept : ARRAY [1..4] OF INT := [10, 2(20), 40]; END_VAR
            Q := Kept[Which];
            Kept[Which] := New;
            First := Kept[1]; Last := Kept[4];
            END_PROGRAM
            """);
        text.Scan(("Which", 3), ("New", 7));
        Assert.Equal((20, 10, 40), (text["Q"], text["First"], text["Last"]));
        text.Scan(("New", 8));
        Assert.Equal(7, text["Q"]);
        text.Scan(("Which", 4), ("New", 9));
        Assert.Equal((40, 10, 9), (text["Q"], text["First"], text["Last"]));
        Assert.Equal(["Kept[1]", "Kept[2]", "Kept[3]", "Kept[4]"], text.System.States.Select(state => state.Variable.Name));
    }

    [Fact]
    public void Structures_hold_fields_and_are_copied_whole()
    {
        Scans text = Scans.Of(
            """
            TYPE
              Dose : STRUCT Amount : INT (0..500) := 50; Given : BOOL; END_STRUCT;
              Recipe : STRUCT Acid, Lime : Dose := (Amount := 20); Steps : ARRAY [0..1, 1..2] OF INT; END_STRUCT;
            END_TYPE
            PROGRAM P
            VAR_INPUT Start, Second : BOOL; END_VAR
            VAR_OUTPUT Acid, Lime, Corner : INT; Given : BOOL; END_VAR
            VAR Recipes : ARRAY [1..2] OF Recipe := [(Acid := (Amount := 5)), (Steps := [1, 2, 3, 4])]; Now : Recipe; END_VAR
            IF Start THEN
              Now := Recipes[SEL(Second, 1, 2)];
              Now.Acid.Given := TRUE;
            END_IF;
            Acid := Now.Acid.Amount; Lime := Now.Lime.Amount; Given := Now.Acid.Given; Corner := Now.Steps[1, 1];
            END_PROGRAM
            """);
        text.Scan();
        Assert.Equal((20, 20, 0, 0), (text["Acid"], text["Lime"], text["Given"], text["Corner"]));
        text.Scan(("Start", 1));
        Assert.Equal((5, 20, 1, 0), (text["Acid"], text["Lime"], text["Given"], text["Corner"]));
        text.Scan(("Second", 1));
        Assert.Equal((20, 20, 1, 3), (text["Acid"], text["Lime"], text["Given"], text["Corner"]));
    }

    [Fact]
    public void A_structure_goes_in_and_out_of_blocks()
    {
        Scans text = Scans.Of(
            """
            TYPE Pair : STRUCT A, B : INT (0..100); END_STRUCT; END_TYPE
            FUNCTION_BLOCK Swap
            VAR_INPUT Given : Pair; END_VAR
            VAR_OUTPUT Turned : Pair; END_VAR
            VAR_IN_OUT Sums : ARRAY [0..1] OF INT; END_VAR
            Turned.A := Given.B; Turned.B := Given.A;
            Sums[0] := Given.A + Given.B;
            END_FUNCTION_BLOCK
            PROGRAM P
            VAR_INPUT X : Pair; END_VAR
            VAR_OUTPUT Q : Pair; Sum : INT; END_VAR
            VAR S : Swap; Sums : ARRAY [0..1] OF INT; END_VAR
            S(Given := X, Sums := Sums, Turned => Q);
            Sum := Sums[0];
            END_PROGRAM
            """);
        text.Scan(("X.A", 3), ("X.B", 4));
        Assert.Equal((4, 3, 7), (text["Q.A"], text["Q.B"], text["Sum"]));
    }

    [Fact]
    public void Blocks_in_an_array_are_called_by_their_number()
    {
        Scans text = Scans.Of(
            """
            PROGRAM P
            VAR_INPUT A : BOOL; END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            VAR Delays : ARRAY [1..3] OF TON; I : INT; END_VAR
            FOR I := 1 TO 3 DO Delays[I](IN := A, PT := T#2s); END_FOR;
            Q := Delays[1].Q AND Delays[3].Q;
            END_PROGRAM
            """);
        Assert.Equal("0011", text.Row("Q", ("A", "1111")));
    }

    [Theory]
    [InlineData("Q := List[N];", "SEQ0744", "N")]
    [InlineData("Q := List[5];", "SEQ0744", "5")]
    [InlineData("Q := List[1, 2];", "SEQ0713", "[1, 2]")]
    [InlineData("Q := N[1];", "SEQ0713", "[1]")]
    [InlineData("Q := List[A];", "SEQ0713", "A")]
    [InlineData("Q := List;", "SEQ0713", "List")]
    [InlineData("List := N;", "SEQ0713", "N")]
    [InlineData("List := Other;", "SEQ0713", "Other")]
    [InlineData("Q := Whole.Third;", "SEQ0717", "Third")]
    [InlineData("Fixed[1] := 3;", "SEQ0716", "Fixed[1]")]
    [InlineData("Calls[Place](CLK := A);", "SEQ0739", "Calls[Place]")]
    public void What_does_not_fit_is_told_at_its_place(string statement, string code, string place)
    {
        ReadingResult result = Scans.Read(
            $"""
            TYPE Two : STRUCT First, Second : INT; END_STRUCT; END_TYPE
            PROGRAM P
            VAR_INPUT N : INT; A : BOOL; Place : INT (1..2); END_VAR
            VAR_OUTPUT Q : INT; END_VAR
            VAR CONSTANT Fixed : ARRAY [1..2] OF INT := [1, 2]; END_VAR
            VAR List : ARRAY [1..4] OF INT; Other : ARRAY [1..5] OF INT; Whole : Two; Calls : ARRAY [1..2] OF R_TRIG; END_VAR
            Q := Fixed[Place];
            {statement}
            END_PROGRAM
            """);
        Assert.Equal((code, place), (result.Diagnostics[0].Code, result.Diagnostics[0].Span.Text.ToString()));
    }

    [Theory]
    [InlineData("IF N >= 1 AND N <= 4 THEN Q := List[N]; END_IF;")]
    [InlineData("Q := List[LIMIT(1, N, 4)];")]
    [InlineData("FOR I := 1 TO 4 DO Q := List[I]; END_FOR;")]
    [InlineData("IF N > 0 AND N < 4 THEN Q := List[N + 1]; END_IF;")]
    public void A_guard_keeps_an_index_inside(string statement) =>
        Assert.Empty(Scans.Read($"PROGRAM P VAR_INPUT N : INT; END_VAR VAR_OUTPUT Q : INT; END_VAR VAR List : ARRAY [1..4] OF INT; I : INT; END_VAR Q := 0; {statement} END_PROGRAM").Diagnostics);

    [Theory]
    [InlineData("X : ARRAY [4..1] OF INT;", "SEQ0713")]
    [InlineData("X : ARRAY [1..N] OF INT;", "SEQ0710")]
    [InlineData("X : ARRAY [1..2] OF INT := [1, 2, 3];", "SEQ0713")]
    [InlineData("X : ARRAY [1..2] OF INT := 3;", "SEQ0713")]
    [InlineData("X : ARRAY [1..2] OF INT := [2000000000(7)];", "SEQ0713")]
    [InlineData("X : ARRAY [1..200, 1..200] OF INT;", "SEQ0739")]
    [InlineData("X : ARRAY [0..9223372036854775807, 0..9223372036854775807] OF INT;", "SEQ0739")]
    [InlineData("X : STRUCT A : INT; A : INT; END_STRUCT;", "SEQ0711")]
    [InlineData("X : STRUCT END_STRUCT;", "SEQ0705")]
    [InlineData("X : LINT;", "SEQ0739")]
    [InlineData("X AT %MB2 : BYTE; Y AT %MX2.7 : BOOL;", "SEQ0740")]
    [InlineData("X AT %MW2 : WORD; Y AT %MW2 : WORD;", "SEQ0730")]
    [InlineData("X AT %MD0 : DWORD; Y AT %MW1 : WORD;", "SEQ0740")]
    [InlineData("X AT %MB0 : ARRAY [0..3] OF BYTE; Y AT %MX3.0 : BOOL;", "SEQ0740")]
    public void A_declaration_that_cannot_be_is_told(string declaration, string code) =>
        Assert.Equal(code, Scans.Read($"PROGRAM P VAR {declaration} END_VAR END_PROGRAM").Diagnostics[0].Code);

    [Theory]
    [InlineData("X AT %MB2 : BYTE; Y AT %MX3.0 : BOOL;")]
    [InlineData("X AT %MW1 : WORD; Y AT %MW2 : WORD;")]
    [InlineData("X AT %MW0 : WORD; Y AT %MX0.3 : BOOL;")]
    [InlineData("X AT %MB1.2 : BYTE; Y AT %MX2.3 : BOOL;")]
    public void Addresses_that_need_not_overlap_are_let_be(string declaration) =>
        Assert.Empty(Scans.Read($"PROGRAM P VAR {declaration} END_VAR END_PROGRAM").Diagnostics);

    /// <summary>IEC 61131-3 (second edition) 2.3.3.2, from memory.</summary>
    [Fact]
    public void A_subrange_begins_with_its_lowest_value()
    {
        Scans text = Scans.Of(
            """
            TYPE Level : INT (-5..5); END_TYPE
            PROGRAM P VAR A : Level; B : ARRAY [0..1] OF INT (3..9); C : INT (-2..2) := 1; END_VAR VAR_OUTPUT Q, R, S : INT; END_VAR
            Q := A; R := B[1]; S := C;
            END_PROGRAM
            """);
        text.Scan();
        Assert.Equal((-5, 3, 1), (text["Q"], text["R"], text["S"]));
    }

    [Fact]
    public void Enumerations_have_a_type_of_their_own_where_one_is_written()
    {
        Scans text = Scans.Of(
            """
            TYPE STATE : USINT (Idle := 1, Running := 200, Held) := Running; END_TYPE
            PROGRAM P VAR S : STATE; END_VAR VAR_OUTPUT Q, R : BOOL; END_VAR Q := S = STATE#Running; R := S <> Held; END_PROGRAM
            """);
        Assert.Equal((1, 1), (text.Scan()["Q"], text["R"]));
        Assert.Equal("SEQ0715", Scans.Read("TYPE STATE : USINT (Idle, Running := 300); END_TYPE PROGRAM P END_PROGRAM").Diagnostics[0].Code);
    }
}
