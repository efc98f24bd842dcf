namespace Sequencer.Language.Tests.Rules;

public sealed class StepConflictTests
{
    [Fact]
    public void A_circle_of_steps_that_no_limit_leaves_is_reported_once() => RuleProgram.Reports(
        "SEQ0414",
        "step 10 \"Fill\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then go 20 "Filling slow"
            go 20 when LT1 >= 0.800 m3

          step 20 "Drain away"
            limit 30 min then go 10 "Draining slow"
            go finish when LT1 < 0.100 m3
            go 10 when LT1 < 0.200 m3
        """);

    [Fact]
    public void Two_steps_that_drive_one_output_differently_is_reported_once() => RuleProgram.Reports(
        "SEQ0415",
        "close XV1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s

        procedure
          step 10 "Open branches"
            limit 30 min then hold "Level does not come"
            go 20 and 30 when LT1 >= 0.100 m3

          step 20 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

          step 30 "Mix"
            run AG1
            close XV1
            limit 10 min then hold "Agitator does not run"
            go finish when YS1
        """);

    [Fact]
    public void An_alternative_that_one_above_it_always_forestalls_is_reported_once() => RuleProgram.Reports(
        "SEQ0416",
        "go finish when LT1 >= 0.900 m3 and LSHH1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        input  LSHH1  switch normally closed  at %IX0.3  "Tank at high-high"

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go 20 when LT1 >= 0.800 m3
            go finish when LT1 >= 0.900 m3 and LSHH1

          step 20 "Rest"
            limit 30 min then hold "Level does not stay"
            go finish when LT1 >= 0.700 m3 stays 10 min
        """);
}
