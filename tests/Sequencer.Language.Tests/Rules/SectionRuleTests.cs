namespace Sequencer.Language.Tests.Rules;

/// <summary>Rules for the procedures of holding, restarting, stopping and aborting.</summary>
public sealed class SectionRuleTests
{
    [Fact]
    public void A_way_from_one_section_to_another_is_reported_once() => RuleProgram.Reports(
        "SEQ0480",
        "go 10 when XV2 stays 60 s",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then go finish "Line not flushed"
            go 10 when XV2 stays 60 s
        """);

    [Fact]
    public void A_step_that_drives_what_the_row_does_not_say_is_reported_once() => RuleProgram.Reports(
        "SEQ0481",
        "open XV2",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then go finish "Line not flushed"
            go finish when XV2 stays 60 s
        """);

    [Fact]
    public void A_row_that_promises_what_no_step_does_is_reported_once() => RuleProgram.Reports(
        "SEQ0482",
        "output XV2  valve  at %QX0.1  \"Line flush\"  safe closed, driven while holding or stopping",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding or stopping

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then go finish "Line not flushed"
            go finish when XV2 stays 60 s
        """);

    [Fact]
    public void A_limit_that_asks_for_what_the_state_does_not_listen_to_is_reported_once() => RuleProgram.Reports(
        "SEQ0483",
        "limit 3 min then hold \"Line not flushed\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then hold "Line not flushed"
            go finish when XV2 stays 60 s
        """);

    [Fact]
    public void Steps_of_a_section_that_go_round_is_reported_once() => RuleProgram.Reports(
        "SEQ0484",
        "step 900 \"Flush the line\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then go finish "Line not flushed"
            go 910 when XV2 stays 60 s

          step 910 "Let it drain"
            limit 2 min then go finish "Line not drained"
            go 900 when at step 910 stays 30 s
        """);

    [Fact]
    public void A_dose_in_a_section_is_reported_once() => RuleProgram.Reports(
        "SEQ0485",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW0  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.0  "Agitator"  safe running  emergency stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.1  "Caustic pump"  safe stopped, delivers CAUSTIC at 0.20 L/min, driven while stopping
        reagent CAUSTIC raises AT1
        interlock I1 "Unmixed" P1 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise"
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 .. 9.00 pH stays 60 s after the last pulse

        stopping
          step 900 "Make the tank safe"
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 1 h then go finish "Still sour"
            go finish when AT1 > 7.50 pH
        """);

    [Fact]
    public void A_batch_finished_by_a_limit_is_reported_once() => RuleProgram.Reports(
        "SEQ0486",
        "limit 30 min then go finish \"Filling slow\"",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then go finish "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line"
            open XV2
            limit 3 min then go finish "Line not flushed"
            go finish when XV2 stays 60 s
        """);

    [Fact]
    public void A_step_done_only_if_with_two_ways_on_is_reported_once() => RuleProgram.Reports(
        "SEQ0487",
        "step 900 \"Flush the line\" only if LT1 < 0.900 m3",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed
        output XV2  valve  at %QX0.1  "Line flush"  safe closed, driven while holding

        procedure
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3

        holding
          step 900 "Flush the line" only if LT1 < 0.900 m3
            open XV2
            limit 3 min then go finish "Line not flushed"
            go 910 when XV2 stays 60 s
            go finish when LT1 > 0.950 m3

          step 910 "Let it drain"
            limit 2 min then go finish "Line not drained"
            go finish when at step 910 stays 30 s
        """);

    [Fact]
    public void A_dose_that_may_be_passed_over_is_reported_once() => RuleProgram.Reports(
        "SEQ0488",
        "dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses",
        """
        language 1
        unit TK1 "Tank"

        input  AT1  0 .. 14.00 pH  at %IW0  "Tank pH"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.0  "Agitator"  safe running  emergency stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.1  "Caustic pump"  safe stopped, delivers CAUSTIC at 0.20 L/min
        reagent CAUSTIC raises AT1
        interlock I1 "Unmixed" P1 blocked unless YS1 and AT1 usable

        procedure
          step 10 "Neutralise" only if AT1 < 7.00 pH
            dose P1 pulse 5 s then wait 45 s toward AT1 at 7.50 pH, at most 5 L a batch, no 0.05 pH in 3 pulses
            limit 2 h then hold "End point not reached"
            go finish when AT1 within 7.50 .. 9.00 pH stays 60 s after the last pulse
        """);

    /// <summary>What a state listens to is what is stronger than what it does already.</summary>
    [Theory]
    [InlineData("restarting", "hold", true)]
    [InlineData("restarting", "alarm", false)]
    [InlineData("holding", "stop", true)]
    [InlineData("holding", "hold", false)]
    [InlineData("stopping", "abort", true)]
    [InlineData("stopping", "stop", false)]
    [InlineData("aborting", "abort", false)]
    [InlineData("aborting", "emergency", false)]
    [InlineData("aborting", "go finish", true)]
    public void A_limit_must_ask_for_something_stronger_than_its_state(string section, string reaction, bool sound)
    {
        string program = $"""
            language 1
            unit TK1 "Tank"

            input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
            output XV1  valve  at %QX0.0  "Inlet"  safe closed

            procedure
              step 10 "Fill"
                open XV1
                limit 30 min then hold "Filling slow"
                go finish when LT1 >= 0.800 m3

            {section}
              step 900 "Wait"
                limit 3 min then {reaction} "Too long"
                go finish when LT1 < 0.700 m3
            """;
        if (sound)
        {
            RuleProgram.IsSilentOn(program);
        }
        else
        {
            RuleProgram.Reports("SEQ0483", $"limit 3 min then {reaction} \"Too long\"", program);
        }
    }

    [Theory]
    [InlineData("holding\nprocedure", "SEQ0125 at: holding\nSEQ0127 at: holding")]
    [InlineData("procedure\nholding", "SEQ0127 at: procedure")]
    public void A_section_comes_behind_the_steps_of_the_procedure(string heads, string told) => RuleProgram.Tells(
        told,
        $"""
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output XV1  valve  at %QX0.0  "Inlet"  safe closed

        {heads}
          step 10 "Fill"
            open XV1
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);

    [Fact]
    public void A_section_stands_there_once_and_has_a_step() => RuleProgram.Tells(
        "SEQ0127 at: stopping\nSEQ0124 at: stopping",
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

        stopping
        stopping
        """);

    [Fact]
    public void A_word_of_a_section_is_no_name() => RuleProgram.Tells(
        "SEQ0110 at: holding",
        """
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
        output holding  valve  at %QX0.0  "Inlet"  safe closed

        procedure
          step 10 "Fill"
            limit 30 min then hold "Filling slow"
            go finish when LT1 >= 0.800 m3
        """);
}
