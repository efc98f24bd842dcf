using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Binding;

public sealed class StepActionCodeTests
{
    [Theory]
    [InlineData("SEQ0240", "    go finish when falling", "    go finish when «P1 dosed»")]
    [InlineData("SEQ0240", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3 and «P2 dosed»")]
    [InlineData("SEQ0241", "    stop P1", "    run P1 for 2 s at each «LSHH1»")]
    [InlineData("SEQ0242", "    run AG1", "    run AG1\n    prompt Q1 \"Clear?\" answers \"yes\" role Operator, limit 1 h then hold \"x\"\n    go 40 when Q1 answered «\"no\"»")]
    [InlineData("SEQ0202", "    run AG1", "    run AG1\n    prompt «P1» \"Clear?\" answers \"yes\" role Operator, limit 1 h then hold \"x\"")]
    [InlineData("SEQ0212", "    run AG1", "    run AG1\n    prompt Q1 \"Clear?\" answers \"yes\", «\"yes\"» role Operator, limit 1 h then hold \"x\"\n    go 40 when Q1 answered")]
    [InlineData("SEQ0206", "    go finish when falling", "    go finish when «P1» answered")]
    [InlineData("SEQ0343", "    run AG1", "    run AG1\n    record \"x\" «LT1 + 1.000 m3»")]
    [InlineData("SEQ0208", "    run AG1", "    run AG1\n    keep AG1 running until step «70»")]
    [InlineData("SEQ0218", "    run AG1", "    run AG1\n    keep AG1 «open» until step 40")]
    [InlineData("SEQ0344", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3\noutput SC1 0 .. 100.0 % at %QW0 \"Speed\" safe «120.0 %»")]
    [InlineData("SEQ0305", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3\noutput SC1 0 .. 100.0 % at %QW0 \"Speed\" safe «0.05 %»")]
    [InlineData("SEQ0345", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3\noutput SC1 0 .. 100.0 % at %QW0 \"Speed\" safe 0 %, rate at most «1.0 % in 5 s»")]
    [InlineData("SEQ0211", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3\noutput SC1 0 .. 100.0 % at «%QX7.0» \"Speed\" safe 0 %")]
    [InlineData("SEQ0309", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3\noutput SC1 «100.0 .. 0» % at %QW0 \"Speed\" safe 0 %")]
    [InlineData("SEQ0206", "    run AG1", "    run AG1\n    set «P1» to 40 %")]
    [InlineData("SEQ0206", "    run AG1", "    run AG1\n    ramp «XV1» from 0 % to 40 % in 1 min")]
    [InlineData("SEQ0215", "    stop P1", "    dose «XV1» amount 3.0 L once a batch")]
    [InlineData("SEQ0340", "    run AG1", "    run AG1\n    dose P2 amount 2.0 L per m3 of «P1.total», at most 12 L a batch")]
    [InlineData("SEQ0341", "    run AG1", "    run AG1\n    dose P2 amount 2.0 L per m3 of LT1 in pulses of «5 s», at most 12 L a batch")]
    [InlineData("SEQ0342", "    run AG1", "    run AG1\n    dose P2 amount 2.0 L per m3 of «fill + 0.100 m3», at most 12 L a batch")]
    [InlineData("SEQ0303", "    run AG1", "    run AG1\n    dose P2 amount «3.0 min» once a batch")]
    [InlineData("SEQ0303", "    run AG1", "    run AG1\n    dose P2 amount 2.0 L per «min» of LT1, at most 12 L a batch")]
    [InlineData("SEQ0303", "    run AG1", "    run AG1\n    dose P2 amount 2.0 L per m3 of «AT1», at most 12 L a batch")]
    [InlineData("SEQ0314", "    run AG1", "    run AG1\n    «dose P2 amount 9000 m3 once a batch»")]
    [InlineData("SEQ0314", "    run AG1", "    run AG1\n    «dose P2 amount 2.0000001 L per m3 of LT1, at most 12 L a batch»")]
    public void A_wrong_action_is_told_once_at_its_exact_place(string code, string replaced, string line) =>
        MarkedProgram.Replacing(replaced.TrimStart(), line).ReportsOnly(code);

    [Fact]
    public void Nothing_is_said_of_a_dose_that_a_malformed_line_may_have_been() =>
        MarkedProgram.Replacing("go finish when falling", "    dose P1 «amunt» 3 L once a batch\n    go finish when P1 dosed").ReportsOnly("SEQ0110");

    [Fact]
    public void An_assumption_about_an_answer_is_told() => MarkedProgram.Of(
        SamplePrograms.Full.Replace("never LSHH1 and LT1 < 1.000 m3", "never LSHH1 and «Q1 answered»", StringComparison.Ordinal)
            .Replace("    run AG1\n", "    run AG1\n    prompt Q1 \"Clear?\" answers \"yes\" role Operator, limit 1 h then hold \"x\"\n", StringComparison.Ordinal)).ReportsOnly("SEQ0217");

    [Fact]
    public void Nothing_is_said_of_a_prompt_that_a_malformed_line_may_ask() =>
        MarkedProgram.Replacing("stop P1", "    prompt Q1 \"Clear?\" «answer» \"yes\" role Operator, limit 1 h then hold \"x\"\n    go 20 when Q1 answered").ReportsOnly("SEQ0110");

    [Theory]
    [InlineData("SEQ0344", "set SC1 to «110 %»")]
    [InlineData("SEQ0303", "set SC1 to «3.000 m3»")]
    [InlineData("SEQ0346", "set SC1 to «10 % + 5 %»")]
    [InlineData("SEQ0344", "ramp SC1 from «-10 %» to 50 % in 1 min")]
    [InlineData("SEQ0303", "ramp SC1 from 10 % to 50 % in «1 m3»")]
    public void A_wrong_value_of_an_output_is_told_once_at_its_exact_place(string code, string line) => MarkedProgram.Of(
        SamplePrograms.Full.Replace("    run AG1\n", $"    run AG1\n    {line}\n", StringComparison.Ordinal)
            .Replace("procedure\n", "output SC1 0 .. 100.0 % at %QW0 \"Speed\" safe 0.0 %\nprocedure\n", StringComparison.Ordinal)).ReportsOnly(code);
}
