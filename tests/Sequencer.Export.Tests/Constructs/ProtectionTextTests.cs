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

    [Theory]
    [InlineData(Groups)]
    [InlineData(Delays)]
    [InlineData(Alarms)]
    public void The_text_is_proved_equal(string declarations) => ConstructExport.IsProvedEqual(ConstructExport.Of(declarations));

    [Theory]
    [InlineData(Groups, "VACUUM_Reset_Edge AND", "Reset_Edge AND")]
    [InlineData(Delays, "(I2_Lingers < 4)", "(I2_Lingers < 3)")]
    [InlineData(Alarms, "THEN A2_State := 2; ELSE A2_State := 1;", "THEN A2_State := 2; ELSE A2_State := 3;")]
    [InlineData(Alarms, "(LT1_Held > (800 - 50))", "(LT1_Held > (800 - 49))")]
    public void A_changed_text_is_found_out(string declarations, string words, string others) =>
        ConstructExport.IsFoundDifferent(ConstructExport.Of(declarations), words, others);
}
