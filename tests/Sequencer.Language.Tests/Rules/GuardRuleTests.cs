namespace Sequencer.Language.Tests.Rules;

/// <summary>Mistakes in delays, groups, votes, alarms, overrides and pairs: each told once, at its words, and nothing beside it.</summary>
public sealed class GuardRuleTests
{
    private const string SealWater = "input  FS1  switch  at %IX0.0  \"Vacuum seal water flows\"\n";

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
