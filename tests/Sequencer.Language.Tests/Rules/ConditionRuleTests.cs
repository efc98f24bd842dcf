namespace Sequencer.Language.Tests.Rules;

public sealed class ConditionRuleTests
{
    [Fact]
    public void A_condition_that_contradicts_itself_is_reported_once() => RuleProgram.Reports(
        "SEQ0417",
        "LT1 >= 0.800 m3 and LT1 < 0.200 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 and LT1 < 0.200 m3
        """);

    [Fact]
    public void A_condition_that_holds_whatever_happens_is_reported_once() => RuleProgram.Reports(
        "SEQ0418",
        "LT1 >= 0.800 m3 or LT1 < 0.900 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 or LT1 < 0.900 m3
        """);

    [Fact]
    public void The_edge_of_a_condition_that_never_changes_is_reported_once() => RuleProgram.Reports(
        "SEQ0419",
        "rising (XV1 and not XV1)",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 and rising (XV1 and not XV1)
        """);

    [Fact]
    public void A_stays_shorter_than_a_scan_is_reported_once() => RuleProgram.Reports(
        "SEQ0420",
        "LT1 >= 0.800 m3 stays 50 ms",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 stays 50 ms
        """);
}
