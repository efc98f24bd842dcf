namespace Sequencer.Language.Tests.Rules;

public sealed class StepLimitTests
{
    [Fact]
    public void A_limit_that_leads_back_to_its_own_step_is_reported_once() => RuleProgram.Reports(
        "SEQ0407",
        "limit 30 min then go 10 \"Filling slow\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then go 10 "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_limit_that_only_alarms_while_the_step_keeps_an_output_on_is_reported_once() => RuleProgram.Reports(
        "SEQ0408",
        "limit 30 min then alarm \"Filling slow\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then alarm "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_limit_shorter_than_the_time_expected_is_reported_once() => RuleProgram.Reports(
        "SEQ0409",
        "limit 30 min then hold \"Filling slow\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            expect 40 min
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_limit_of_many_times_what_is_expected_is_reported_once() => RuleProgram.Reports(
        "SEQ0431",
        "limit 300 min then hold \"Filling slow\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            expect 30 min
            limit 300 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_stays_as_long_as_the_limit_of_its_step_is_reported_once() => RuleProgram.Reports(
        "SEQ0410",
        "LT1 >= 0.800 m3 stays 45 min",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3 stays 45 min
        """);

    [Fact]
    public void A_limit_that_ends_the_step_before_the_first_pulse_is_over_is_reported_once() => RuleProgram.Reports(
        "SEQ0411",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1
        interlock I1 "Dosing needs mixing" P1 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 40 s then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH
        """);

    [Fact]
    public void A_check_on_response_that_the_limit_forestalls_is_reported_once() => RuleProgram.Reports(
        "SEQ0412",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 0.5 L a batch, no 0.05 pH in 3 pulses",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1
        interlock I1 "Dosing needs mixing" P1 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 0.5 L a batch, no 0.05 pH in 3 pulses
            limit 3 min then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_fill_that_cannot_be_done_within_the_limit_is_reported_once() => RuleProgram.Reports(
        "SEQ0413",
        "go finish when LT1 >= 0.800 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        assume A1 "Filling is no faster than" LT1 rises at most 0.020 m3/min

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_step_whose_limit_is_over_before_the_other_branch_is_expected_is_reported_once() => RuleProgram.Reports(
        "SEQ0429",
        "limit 10 min then hold \"Waiting too long\"",
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
            expect 40 min
            limit 60 min then hold "Agitator does not run"
            go 40 when YS1

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
    public void An_action_delayed_beyond_the_limit_is_reported_once() => RuleProgram.Reports(
        "SEQ0430",
        "open XV1 after 40 min",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1 after 40 min
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);
}
