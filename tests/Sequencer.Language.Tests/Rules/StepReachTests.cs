namespace Sequencer.Language.Tests.Rules;

public sealed class StepReachTests
{
    [Fact]
    public void A_step_to_which_no_way_leads_is_reported_once() => RuleProgram.Reports(
        "SEQ0401",
        "step 20 \"Rest\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

          step 20 "Rest"
            limit 30 min then hold "Level does not stay"
            go finish when LT1 >= 0.700 m3 stays 10 min
        """);

    [Fact]
    public void A_join_whose_steps_are_never_active_together_is_reported_once() => RuleProgram.Reports(
        "SEQ0402",
        "join 30, 40 to 50 when YS1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 0.800 m3

          step 20 "Mix"
            run AG1
            limit 10 min then hold "Agitator does not run"
            go 40 when YS1
            go 30 when LT1 < 0.700 m3

          step 30 "Settle feed"
            limit 10 min then hold "Waiting too long"

          step 40 "Mixed"
            limit 10 min then hold "Waiting too long"

          join 30, 40 to 50 when YS1

          step 50 "Rest"
            limit 10 min then hold "Tank not still"
            go finish when not YS1
        """);

    [Fact]
    public void A_join_that_waits_for_a_branch_which_can_end_elsewhere_is_reported_once() => RuleProgram.Reports(
        "SEQ0403",
        "join 30, 40 to 50 when YS1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 and 30 when LT1 >= 0.800 m3

          step 20 "Mix"
            run AG1
            limit 10 min then hold "Agitator does not run"
            go 40 when YS1
            go finish when LT1 < 0.700 m3

          step 30 "Settle feed"
            limit 10 min then hold "Waiting too long"

          step 40 "Mixed"
            limit 10 min then hold "Waiting too long"

          join 30, 40 to 50 when YS1

          step 50 "Rest"
            limit 10 min then hold "Tank not still"
            go finish when not YS1
        """);

    [Fact]
    public void A_step_that_can_be_entered_while_it_is_active_is_reported_once() => RuleProgram.Reports(
        "SEQ0404",
        "go 30 when YS1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 and 30 when LT1 >= 0.800 m3

          step 20 "Mix"
            run AG1
            limit 10 min then hold "Agitator does not run"
            go 30 when YS1

          step 30 "Rest"
            limit 20 min then hold "Tank not still"
            go finish when LT1 < 0.500 m3
        """);

    [Fact]
    public void A_step_that_nothing_leaves_is_reported_once() => RuleProgram.Reports(
        "SEQ0405",
        "step 20 \"Rest\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 0.800 m3

          step 20 "Rest"
            limit 30 min then alarm "Still resting"
        """);

    [Fact]
    public void A_step_that_only_its_limit_ends_is_reported_once() => RuleProgram.Reports(
        "SEQ0406",
        "step 20 \"Rest\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 0.800 m3

          step 20 "Rest"
            limit 30 min then hold "Rested"
        """);
}
