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
