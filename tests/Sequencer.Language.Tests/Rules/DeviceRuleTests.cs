namespace Sequencer.Language.Tests.Rules;

public sealed class DeviceRuleTests
{
    [Fact]
    public void An_interlock_that_takes_a_command_for_proof_is_reported_once() => RuleProgram.Reports(
        "SEQ0506",
        "XV1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output P1   motor  at %QX0.2  "Feed pump"  safe stopped
        interlock I1 "No dead-heading" P1 blocked unless XV1

        procedure
          step 10 "Fill"
            open XV1
            run P1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_confirmation_demanded_in_less_than_a_scan_is_reported_once() => RuleProgram.Reports(
        "SEQ0507",
        "YS1 within 50 ms",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 50 ms
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            run AG1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_high_high_switch_that_is_normally_open_is_reported_once() => RuleProgram.Reports(
        "SEQ0509",
        "LSHH1",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  LSHH1  switch  at %IX0.3  "Tank at high-high"
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        interlock I1 "Overfill" XV1 blocked while LSHH1

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_value_at_rest_that_does_not_say_if_bad_is_reported_once() => RuleProgram.Reports(
        "SEQ0510",
        "running while LT1 > 0.200 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output AG1  motor  at %QX0.1  "Agitator"  safe running while LT1 > 0.200 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_dosing_output_that_can_be_on_at_rest_is_reported_once() => RuleProgram.Reports(
        "SEQ0513",
        "running",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  held running  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1
        interlock I1 "Dosing needs mixing" P1 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_latch_that_is_cleared_whenever_it_is_set_is_reported_once() => RuleProgram.Reports(
        "SEQ0514",
        "FILLED",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        latch FILLED "The tank was filled" set when LT1 > 0.800 m3 clear when LT1 > 0.700 m3

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when FILLED
        """);
}
