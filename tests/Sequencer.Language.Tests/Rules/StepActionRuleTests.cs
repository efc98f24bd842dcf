namespace Sequencer.Language.Tests.Rules;

public sealed class StepActionRuleTests
{
    [Fact]
    public void An_amount_that_takes_longer_than_the_limit_is_reported_once() => RuleProgram.Reports(
        "SEQ0440", "dose P1 amount 30 L once a batch", Dose("dose P1 amount 30 L once a batch", "2 min", "P1 dosed"));

    [Fact]
    public void A_step_that_can_be_left_before_the_amount_is_given_is_reported_once() => RuleProgram.Reports(
        "SEQ0441", "go finish when LT1 > 5.000 m3", Dose("dose P1 amount 3.0 L once a batch", "30 min", "LT1 > 5.000 m3"));

    [Theory]
    [InlineData("dose P1 amount 3.0 L once a batch", "P1 dosed")]
    [InlineData("dose P1 amount 3.0 L once a batch", "P1.total >= 3.0 L")]
    [InlineData("dose P1 amount 2.0 L per m3 of LT1, at most 12 L a batch", "P1 dosed and LT1 > 5.000 m3")]
    public void A_step_that_waits_for_its_dose_is_sound(string dose, string condition) => RuleProgram.IsSilentOn(Dose(dose, "30 min", condition));

    [Theory]
    [InlineData("SEQ0442", "go finish when Q1 answered \"clear\"", "10 min")]
    [InlineData("SEQ0443", "go finish when Q1 answered", "30 min")]
    public void A_prompt_without_a_way_on_is_reported_once(string code, string way, string limit) => RuleProgram.Reports(
        code, $"prompt Q1 \"Clear?\" answers \"clear\", \"yellow\" role Operator, limit {limit} then hold \"Nobody answered\"", Asks(way, limit));

    [Theory]
    [InlineData("go finish when Q1 answered")]
    [InlineData("go finish when Q1 answered \"clear\"\n    go 10 when Q1 answered \"yellow\", at most 3 times then hold \"Yellow\"")]
    [InlineData("go finish when Q1 answered and not Q1 answered \"yellow\"\n    go 10 when Q1 answered \"yellow\", at most 1 time then stop \"Yellow\"")]
    public void A_prompt_with_a_way_for_every_answer_is_sound(string ways) => RuleProgram.IsSilentOn(Asks(ways, "10 min"));

    private static string Asks(string ways, string limit) => $"""
        language 1
        unit TK1 "Tank"

        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.1  "Agitator"   safe stopped  confirm YS1 within 5 s

        procedure
          step 10 "Test"
            run AG1
            prompt Q1 "Clear?" answers "clear", "yellow" role Operator, limit {limit} then hold "Nobody answered"
            limit 30 min then hold "Test slow"
            {ways}
        """;

    [Fact]
    public void A_circle_that_nothing_counts_is_reported_once() => RuleProgram.Reports(
        "SEQ0444", "go 10 when LT1 < 4.000 m3", Circle("", "run AG1", "go 10 when LT1 < 4.000 m3"));

    [Fact]
    public void What_is_kept_until_a_step_that_never_follows_is_reported_once() => RuleProgram.Reports(
        "SEQ0445", "keep AG1 running until step 10", Circle("keep AG1 running until step 10", "", ""));

    [Fact]
    public void What_is_kept_past_its_end_on_some_way_is_reported_once() => RuleProgram.Reports(
        "SEQ0446", "keep AG1 running until step 30", Circle("keep AG1 running until step 30", "", "go finish when LT1 < 0.100 m3"));

    [Theory]
    [InlineData("", "run AG1", "go 10 when LT1 < 4.000 m3, at most 3 times then hold \"The tank loses water\"")]
    [InlineData("keep AG1 running until step 30", "", "")]
    public void A_counted_circle_and_a_kept_action_that_ends_are_sound(string keep, string stir, string way) => RuleProgram.IsSilentOn(Circle(keep, stir, way));

    private static string Circle(string keep, string stir, string way) => $"""
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 6.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output XV1  valve  at %QX0.2  "Inlet"     safe closed

        procedure
          step 10 "Fill"
            open XV1
            {keep}
            limit 30 min then hold "Filling slow"
            go 20 when LT1 > 5.000 m3
          step 20 "Stir"
            {stir}
            limit 1 h then hold "Stirring slow"
            go 30 when at step 20 stays 10 min
            {way}
          step 30 "Rest"
            limit 30 min then hold "Resting slow"
            go finish when at step 30 stays 1 min
        """;

    [Theory]
    [InlineData("SEQ0447", "set SC1 to 50.0 %\n    set SC1 to 60.0 %", "set SC1 to 60.0 %")]
    [InlineData("SEQ0448", "ramp SC1 from 0 % to 60.0 % in 30 min", "ramp SC1 from 0 % to 60.0 % in 30 min")]
    public void A_wrong_value_in_a_step_is_reported_once(string code, string lines, string words) => RuleProgram.Reports(code, words, Speed(lines));

    [Theory]
    [InlineData("set SC1 to 50.0 %")]
    [InlineData("ramp SC1 from 10.0 % to 60.0 % in 5 min")]
    public void A_value_in_a_step_is_sound(string lines) => RuleProgram.IsSilentOn(Speed(lines));

    private static string Speed(string lines) => $"""
        language 1
        unit TK1 "Tank"

        input  YS1  switch  at %IX0.0  "Agitator running"
        output AG1  motor  at %QX0.1  "Agitator"  safe stopped  confirm YS1 within 5 s
        output SC1  0 .. 100.0 %  at %QW0  "Agitator speed"  safe 0.0 %, rate at most 5.0 % in 1 s

        interlock I1 "At rest" SC1 blocked unless YS1

        procedure
          step 10 "Stir"
            run AG1
            {lines}
            limit 30 min then hold "Stirring slow"
            go finish when at step 10 stays 10 min
        """;

    private static string Dose(string dose, string limit, string condition) => $"""
        language 1
        unit TK1 "Tank"

        input  LT1  0 .. 6.000 m3  at %IW0  "Tank volume"  bad after 2 s
        input  YS1  switch  at %IX0.0  "Agitator running"

        output AG1  motor  at %QX0.1  "Agitator"   safe stopped  confirm YS1 within 5 s
        output P1   motor  at %QX0.2  "Lime pump"  safe stopped  delivers LIME at 12.0 L/min

        reagent LIME "Lime slurry"
        interlock I1 "Dosing needs mixing" P1 blocked unless YS1
        alarm A1 "Level high" when LT1 > 5.500 m3, on after 5 s

        procedure
          step 10 "Dose"
            run AG1
            {dose}
            limit {limit} then hold "Dosing slow"
            go finish when {condition}
        """;
}
