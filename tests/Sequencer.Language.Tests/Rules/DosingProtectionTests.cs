namespace Sequencer.Language.Tests.Rules;

public sealed class DosingProtectionTests
{
    [Fact]
    public void A_dosing_output_that_only_a_permissive_guards_is_reported_once() => RuleProgram.Reports(
        "SEQ0523",
        "permissive I2 \"Dosing starts mixed\" P1 starts only with YS1 and AT1 usable",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1
        permissive I2 "Dosing starts mixed" P1 starts only with YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_dosing_output_that_no_interlock_can_stop_is_reported_once() => RuleProgram.Reports(
        "SEQ0524",
        "P1",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void A_dosing_output_that_does_not_need_the_agitator_is_reported_once() => RuleProgram.Reports(
        "SEQ0525",
        "P1",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1
        interlock I1 "Dosing needs mixing" P1 blocked unless AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);

    [Fact]
    public void Opposing_reagents_that_nothing_keeps_apart_is_reported_once() => RuleProgram.Reports(
        "SEQ0526",
        "P2",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW2  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Caustic pump"  safe stopped  delivers CAUSTIC at 0.60 L/min
        output P2   motor  at %QX0.3  "Acid pump"  safe stopped  delivers ACID at 0.60 L/min

        reagent CAUSTIC "Sodium hydroxide 10 %" raises AT1 opposes ACID
        reagent ACID "Sulphuric acid 10 %" lowers AT1
        interlock I1 "Dosing needs mixing" P1, P2 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            run AG1
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            dose P2 pulse 5 s then wait 45 s toward AT1 at 9.00 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 pH .. 9.00 pH stays 60 s after the last pulse
        """);
}
