namespace Sequencer.StructuredText.Tests;

/// <summary>IEC 61131-3 (second edition) Tables 34 (bistables), 35 (edges) and 36 (counters), from memory.</summary>
public sealed class StandardBlockTests
{
    [Theory]
    [InlineData("SR", "Block1(S1 := A, R := B, Q1 => Q);", "0110011")]
    [InlineData("RS", "Block1(S := A, R1 := B, Q1 => Q);", "0110010")]
    public void A_bistable_keeps_what_was_set_until_it_is_reset(string type, string call, string expected)
    {
        Assert.Equal(expected, Block(type, call).Row("Q", ("A", "0100011"), ("B", "0001001")));
    }

    [Fact]
    public void A_bistable_with_both_inputs_true_shows_its_dominance()
    {
        Assert.Equal("1", Block("SR", "Block1(S1 := A, R := B, Q1 => Q);").Row("Q", ("A", "1"), ("B", "1")));
        Assert.Equal("0", Block("RS", "Block1(S := A, R1 := B, Q1 => Q);").Row("Q", ("A", "1"), ("B", "1")));
    }

    [Fact]
    public void A_rising_edge_is_seen_in_the_first_scan_with_the_input_true()
    {
        Assert.Equal("1000100", Block("R_TRIG", "Block1(CLK := A, Q => Q);").Row("Q", ("A", "1100110")));
    }

    [Fact]
    public void A_falling_edge_is_seen_in_the_first_scan_with_the_input_false()
    {
        Assert.Equal("1000010", Block("F_TRIG", "Block1(CLK := A, Q => Q);").Row("Q", ("A", "0011100")));
    }

    [Fact]
    public void An_up_counter_counts_edges_and_a_reset_wins()
    {
        Scans counter = Block("CTU", "Block1(CU := A, R := B, PV := 3, Q => Q);");
        Assert.Equal("00000100", counter.Row("Q", ("A", "01010100"), ("B", "00000011")));
        Assert.Equal(0, counter["Block1.CV"]);
    }

    [Fact]
    public void A_down_counter_loads_and_counts_to_zero()
    {
        Scans counter = Block("CTD", "Block1(CD := A, LD := B, PV := 2, Q => Q);");
        Assert.Equal("1000011", counter.Row("Q", ("A", "0001010"), ("B", "0100000")));
    }

    [Fact]
    public void An_up_down_counter_ignores_two_edges_in_one_scan()
    {
        Scans counter = Block("CTUD", "Block1(CU := A, CD := B, R := FALSE, LD := FALSE, PV := 1, QU => Q);");
        Assert.Equal("0011110", counter.Row("Q", ("A", "0010100"), ("B", "0000101")));
    }

    private static Scans Block(string type, string call) => Scans.Of(
        $"""
        PROGRAM Main
        VAR_INPUT A : BOOL; B : BOOL; END_VAR
        VAR_OUTPUT Q : BOOL; END_VAR
        VAR Block1 : {type}; END_VAR
        {call}
        END_PROGRAM
        """);
}
