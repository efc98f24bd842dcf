namespace Sequencer.Export.Tests.Constructs;

/// <summary>Each construct of protection as text: proved equal to the program, and a changed text is not.</summary>
public sealed class ProtectionTextTests
{
    private const string Groups = """
        group VACUUM "Vacuum system"
        trip T1 "First"  when S2 then hold
        trip T2 "Second" when S3 then hold, group VACUUM
        trip T3 "Third"  when S4 then stop, group VACUUM
        interlock I1 "Full" M1 blocked from S4 until not S4 and reset, group VACUUM
        """;

    private const string Delays = """
        trip T1 "High" when LT1 > 8.00 m3, on after 0.3 s, off after 0.5 s, then hold, if bad hold
        interlock I1 "Block" M1 blocked while S2 or LT1 > 9.00 m3, on after 0.2 s, off after 0.4 s
        interlock I2 "Block" M1 blocked unless S3, off after 0.4 s
        """;

    private const string Alarms = """
        alarm A1 "Full" when LT1 > 8.00 m3 deadband 0.50 m3, on after 0.3 s, off after 0.5 s, suppressed at step 10, priority high,
          consequence "Overflow", response "Close the inlet" within 10 min
        alarm A2 "Second" when S2, priority low, consequence "None worth telling", response "Look" within 1 h
        """;

    private const string Overrides = """
        interlock I1 "Block" M1 blocked while S2
        interlock I2 "Block" M1 blocked from S3 until not S3 and reset
        trip T1 "Trip" when LT1 > 8.00 m3 then hold, if bad hold
        override of I1 at most 0.5 s role Maintenance "Switch out for repair"
        override of I2 at most 30 min role Maintenance "Switch out for repair"
        override of T1 at most 2 s role Shift_lead "Test of the trip"
        require H1 "Block" never M1 and S2 and not I1 overridden
        """;

    private const string Votes = """
        input  LT2  0 .. 10.00 m3  at %IW2  "Second level"
        input  LT3  0 .. 10.00 m3  at %IW4  "Third level"  usable only while not V
        voted V "Full" 2oo3 of S2, S3, S4, differ for 0.3 s
        voted W "Full" 2oo3 of LT1 > 8.00 m3, LT2 > 8.00 m3, LT3 > 8.00 m3, if bad fewer votes, differ for 0.5 s
        trip T1 "Full" when W, on after 0.2 s, then hold, if bad hold
        interlock I1 "Full" M1 blocked while V or W
        """;

    private const string Pair = """
        input  Y1  switch  at %IX1.0  "First pump running"
        input  Y2  switch  at %IX1.1  "Second pump running"
        output D1  motor  at %QX1.0  "First pump"   safe stopped  confirm Y1 within 0.3 s else alarm
        output D2  motor  at %QX1.1  "Second pump"  safe stopped  confirm Y2 within 0.3 s else alarm
        interlock I1 "Blocked" D1 blocked while S2
        pair P "Pumps" D1, D2 duty D1, changes over within 1 s, rotates each batch
        alarm A1 "No pump" when P failed
        alarm A2 "Runs" when P proved
        """;

    private const string PairRuns = """
          step 10 "Only"
            run P while not S3
            limit 10 s then hold "Too long"
            go finish when S1
        """;

    [Fact]
    public void The_text_of_a_pair_is_proved_equal() => ConstructExport.IsProvedEqual(ConstructExport.Of(Pair, PairRuns));

    [Theory]
    [InlineData("IF P_Changes THEN", "IF P_Changes AND D2_Available THEN")]
    [InlineData("OR D1_Barred);", ");")]
    public void A_changed_text_of_a_pair_is_found_out(string words, string others) =>
        ConstructExport.IsFoundDifferent(ConstructExport.Of(Pair, PairRuns), words, others);

    [Theory]
    [InlineData(Groups)]
    [InlineData(Votes)]
    [InlineData(Overrides)]
    [InlineData(Delays)]
    [InlineData(Alarms)]
    public void The_text_is_proved_equal(string declarations) => ConstructExport.IsProvedEqual(ConstructExport.Of(declarations));

    [Theory]
    [InlineData(Groups, "VACUUM_Reset_Edge AND", "Reset_Edge AND")]
    [InlineData(Delays, "(I2_Lingers < 4)", "(I2_Lingers < 3)")]
    [InlineData(Alarms, "THEN A2_State := 2; ELSE A2_State := 1;", "THEN A2_State := 2; ELSE A2_State := 3;")]
    [InlineData(Alarms, "(LT1_Held > (800 - 50))", "(LT1_Held > (800 - 49))")]
    [InlineData(Overrides, "AND (I1_Override_Clock < 5);", "AND (I1_Override_Clock < 6);")]
    [InlineData(Overrides, "AND Role_Shift_Lead AND (T1_Override_Clock", "AND (T1_Override_Clock")]
    [InlineData(Overrides, "I2_Blocks := I2_Blocks AND (NOT I2_Override_Active);", "")]
    [InlineData(Votes, "V := ((S2 AND S3)", "V := ((S2 OR S3)")]
    public void A_changed_text_is_found_out(string declarations, string words, string others) =>
        ConstructExport.IsFoundDifferent(ConstructExport.Of(declarations), words, others);
}
