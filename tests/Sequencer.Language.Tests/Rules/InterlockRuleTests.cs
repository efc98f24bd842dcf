namespace Sequencer.Language.Tests.Rules;

public sealed class InterlockRuleTests
{
    [Fact]
    public void An_interlock_that_blocks_and_lets_go_at_one_value_is_reported_once() => RuleProgram.Reports(
        "SEQ0520",
        "LT1 > 0.700 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        interlock I1 "Overfill" XV1 blocked while LT1 > 0.700 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_release_that_overlaps_its_cause_is_reported_once() => RuleProgram.Reports(
        "SEQ0521",
        "LT1 < 0.950 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        interlock I1 "Overfill" XV1 blocked from LT1 > 0.900 m3 until LT1 < 0.950 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_release_too_near_to_its_cause_is_reported_once() => RuleProgram.Reports(
        "SEQ0522",
        "LT1 < 0.898 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        interlock I1 "Overfill" XV1 blocked from LT1 > 0.900 m3 until LT1 < 0.898 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void An_interlock_on_settings_alone_is_reported_once() => RuleProgram.Reports(
        "SEQ0527",
        "full > 0.700 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        parameter full = 0.800 m3 from 0.500 m3 to 0.900 m3
        interlock I1 "Overfill" XV1 blocked while full > 0.700 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= full
        """);

    [Fact]
    public void A_block_that_forces_an_output_on_is_reported_once() => RuleProgram.Reports(
        "SEQ0528",
        "interlock I1 \"Guard\" AG1 blocked while HS1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  HS1  switch  at %IX0.4  "Guard open"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe running
        interlock I1 "Guard" AG1 blocked while HS1

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_protection_that_looks_at_what_it_blocks_is_reported_once() => RuleProgram.Reports(
        "SEQ0565",
        "XV1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"   safe closed
        output XV2  valve  at %QX0.1  "Outlet"  safe closed
        interlock I1 "Apart"  XV1, XV2  exclusive
        interlock I2 "Never"  XV1       blocked while LT1 > 0.900 m3 and XV1

        procedure
          step 10 "Fill"
            open XV1
            open XV2
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_device_that_needs_its_own_proof_to_start_is_reported_once() => RuleProgram.Reports(
        "SEQ0533",
        "ZSO1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  ZSO1  switch  at %IX0.1  "Inlet open"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed  confirm ZSO1 within 8 s
        interlock I1 "Inlet proved" XV1 blocked unless ZSO1

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);
}
