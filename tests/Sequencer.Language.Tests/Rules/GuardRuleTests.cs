namespace Sequencer.Language.Tests.Rules;

/// <summary>Mistakes in delays, groups, votes, alarms, overrides and pairs: each told once, at its words, and nothing beside it.</summary>
public sealed class GuardRuleTests
{
    private const string SealWater = "input  FS1  switch  at %IX0.0  \"Vacuum seal water flows\"\n";

    private const string Two = """
        input  S1  switch  at %IX0.1  "First"
        input  S2  switch  at %IX0.2  "Second"

        """;

    private const string Dry = "interlock I1 \"No seal water\" XV1 blocked unless FS1\n";

    [Theory]
    [InlineData("SEQ0540", "VACUUM", SealWater + """
        group VACUUM "Vacuum system"
        trip T1 "Seal water lost" when not FS1 then hold, group VACUUM
        interlock I1 "Tank full" XV1 blocked from LT1 > 0.950 m3 until LT1 < 0.900 m3, group VACUUM
        """)]
    [InlineData("SEQ0541", "group VACUUM \"Vacuum system\"", SealWater + """
        group VACUUM "Vacuum system"
        trip T1 "Seal water lost" when not FS1 then hold
        """)]
    [InlineData("SEQ0206", "FS1", SealWater + """
        trip T1 "Seal water lost" when not FS1 then hold, group FS1
        """)]
    public void A_group_that_cannot_be_meant_is_reported_once(string code, string words, string lines) => Reports(code, words, lines);

    [Theory]
    [InlineData("SEQ0542", "not FS1", SealWater + """
        trip T1 "Seal water lost" when not FS1, on after 5 s, then abort
        require H1 "No dry running" after not FS1, everything safe within 3 s
        """)]
    [InlineData("SEQ0542", "not FS1", SealWater + """
        interlock I1 "Seal water lost" XV1 blocked while not FS1, on after 0.2 s, off after 2 s
        require H1 "No dry running" after not FS1 XV1 closed within 1 scan
        """)]
    [InlineData("SEQ0116", "on after", SealWater + """
        trip T1 "Seal water lost" when not FS1, on after 5 s, on after 6 s, then abort
        """)]
    public void A_delay_that_cannot_be_meant_is_reported_once(string code, string words, string lines) => Reports(code, words, lines);

    [Theory]
    [InlineData("SEQ0543", "A1", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.020 m3, priority medium, consequence \"Overflow\"")]
    [InlineData("SEQ0543", "A1", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.020 m3, response \"Close\" within 10 min, consequence \"Overflow\"")]
    [InlineData("SEQ0543", "A1", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.020 m3, response \"Close\" within 10 min, priority low")]
    [InlineData("SEQ0544", "0.020 m3", SealWater + "alarm A1 \"Seal water lost\" when not FS1 deadband 0.020 m3")]
    [InlineData("SEQ0544", "0.020 m3", "alarm A1 \"Full\" when LT1 within 0.900 m3 .. 0.950 m3 deadband 0.020 m3")]
    [InlineData("SEQ0305", "0.0205 m3", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.0205 m3")]
    [InlineData("SEQ0311", "0.970 m3", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.970 m3")]
    [InlineData("SEQ0208", "40", "alarm A1 \"Full\" when LT1 > 0.950 m3 deadband 0.020 m3, suppressed at step 40")]
    [InlineData("SEQ0545", "A1", "alarm A1 \"Full\" when LT1 > 0.950 m3")]
    [InlineData("SEQ0546", "A1", "alarm A1 \"Full\" when LT1 > 0.950 m3, on after 10 min, priority high, consequence \"Overflow\", response \"Close\" within 10 min")]
    public void An_alarm_that_helps_nobody_is_reported_once(string code, string words, string lines) => Reports(code, words, lines);

    [Theory]
    [InlineData("SEQ0547", "T1", "input ES1 switch normally closed at %IX0.0 \"Emergency stop pressed\"\ntrip T1 \"Stop\" when ES1 then emergency\noverride of T1 at most 30 min role Maintenance \"Why\"")]
    [InlineData("SEQ0548", "I1", "output XV2 valve at %QX0.1 \"Second\" safe open\ninterlock I1 \"One\" XV1, XV2 exclusive\noverride of I1 at most 30 min role Maintenance \"Why\"")]
    [InlineData("SEQ0549", "I1", SealWater + Dry + "override of I1 role Maintenance \"Why\"")]
    [InlineData("SEQ0550", "481 min", SealWater + Dry + "override of I1 at most 481 min role Maintenance \"Why\"")]
    [InlineData("SEQ0551", "I1", SealWater + Dry + "override of I1 at most 8 h role Maintenance \"Why\"\noverride of I1 at most 1 h role Maintenance \"Why\"")]
    [InlineData("SEQ0552", "I1 overridden", SealWater + Dry + "alarm A1 \"Dry\" when I1 overridden")]
    [InlineData("SEQ0201", "I9", SealWater + Dry + "override of I9 at most 1 h role Maintenance \"Why\"")]
    [InlineData("SEQ0206", "XV1", SealWater + Dry + "override of XV1 at most 1 h role Maintenance \"Why\"")]
    [InlineData("SEQ0110", "\"Why\"", SealWater + Dry + "override of I1 at most 1 h \"Why\"")]
    public void An_override_that_must_not_be_is_reported_once(string code, string words, string lines) => Reports(code, words, lines);

    [Theory]
    [InlineData("SEQ0553", "3oo2", "voted V \"Full\" 3oo2 of S1, S2\n")]
    [InlineData("SEQ0553", "0oo2", "voted V \"Full\" 0oo2 of S1, S2\n")]
    [InlineData("SEQ0553", "2oo3", "voted V \"Full\" 2oo3 of S1, S2\n")]
    [InlineData("SEQ0553", "1oo6", "voted V \"Full\" 1oo6 of S1, S2, not S1, not S2, LT1 > 0.9 m3, LT1 > 0.8 m3, if bad demand\n")]
    [InlineData("SEQ0554", "XV1", "voted V \"Full\" 1oo2 of S1, XV1\n")]
    [InlineData("SEQ0554", "LT1 usable", "voted V \"Full\" 1oo2 of S1, LT1 usable\n")]
    [InlineData("SEQ0212", "S1", "voted V \"Full\" 1oo2 of S1, S1\n")]
    [InlineData("SEQ0201", "S9", "voted V \"Full\" 1oo2 of S1, S9\n")]
    [InlineData("SEQ0555", "V", "voted V \"Full\" 1oo2 of S1, LT1 > 0.9 m3\n")]
    public void A_vote_that_cannot_be_is_reported_once(string code, string words, string lines) => Reports(code, words, Two + lines + """
        interlock I8 "Read" XV1 blocked while S1 or S2
        interlock I9 "Read" XV1 blocked while V
        """);

    [Fact]
    public void A_vote_that_nothing_reads_is_reported_once() => Reports(
        "SEQ0556", "voted V \"Full\" 1oo2 of S1, S2", Two + "voted V \"Full\" 1oo2 of S1, S2\ninterlock I1 \"Any\" XV1 blocked while S1 or S2");

    [Fact]
    public void A_vote_of_switches_and_readings_is_not_told_of() => RuleProgram.IsSilentOn(Program(Two + """
        voted V "Full" 2oo3 of S1, not S2, LT1 > 0.950 m3, if bad fewer votes, differ for 30 s
        voted W "Full" 1oo2 of S1, S2, differ for 30 s
        trip T1 "Full" when V, on after 1 s, then hold, if bad trip
        trip T2 "Full" when W then hold
        """));

    [Fact]
    public void An_override_with_role_reason_and_end_is_not_told_of() => RuleProgram.IsSilentOn(Program(SealWater + Dry + """
        override of I1 at most 8 h role Maintenance "Flow switch out for repair"
        alarm A1 "Inlet without seal water" when I1 overridden and not FS1
        """));

    [Fact]
    public void An_alarm_with_all_that_is_known_of_it_is_not_told_of() => RuleProgram.IsSilentOn(Program("""
        alarm A1 "Full" when LT1 > 0.950 m3 deadband 0.020 m3, on after 5 s, off after 10 s, suppressed at step 10, priority high,
          consequence "Overflow", response "Close the inlet" within 10 min
        alarm A2 "Nearly empty" when 0.050 m3 > LT1 deadband 0.020 m3
        """));

    [Fact]
    public void Delays_and_groups_that_make_sense_are_not_told_of() => RuleProgram.IsSilentOn(Program(SealWater + """
        group VACUUM "Vacuum system"
        trip T1 "Seal water lost" when not FS1, on after 2 s, off after 5 s, then abort, group VACUUM
        require H1 "No dry running" after not FS1, everything safe within 3 s
        """));

    private static void Reports(string code, string words, string lines) => RuleProgram.Reports(code, words, Program(lines));

    private static string Program(string lines) => $"""
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        {lines}

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        """;
}
