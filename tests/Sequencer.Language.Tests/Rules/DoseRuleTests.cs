namespace Sequencer.Language.Tests.Rules;

public sealed class DoseRuleTests
{
    [Fact]
    public void A_dose_that_does_not_wait_between_pulses_is_reported_once() => RuleProgram.Reports(
        "SEQ0421",
        "dose P1 pulse 5 s then wait 50 ms toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s then wait 50 ms toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_maximum_smaller_than_one_pulse_is_reported_once() => RuleProgram.Reports(
        "SEQ0424",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 0.04 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 0.04 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_maximum_far_out_of_reach_is_reported_once() => RuleProgram.Reports(
        "SEQ0425",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 100 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 100 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_fine_pulse_that_is_not_finer_is_reported_once() => RuleProgram.Reports(
        "SEQ0426",
        "dose P1 pulse 5 s, 8 s within 1.50 pH then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s, 8 s within 1.50 pH then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_fine_band_wider_than_the_way_to_the_target_is_reported_once() => RuleProgram.Reports(
        "SEQ0427",
        "dose P1 pulse 5 s, 1 s within 8.00 pH then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s, 1 s within 8.00 pH then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_dose_that_stops_short_of_the_band_is_reported_once() => RuleProgram.Reports(
        "SEQ0428",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.00 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
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
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.00 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);
}
