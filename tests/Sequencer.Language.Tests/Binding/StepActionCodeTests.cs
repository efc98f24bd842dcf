using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Binding;

public sealed class StepActionCodeTests
{
    [Theory]
    [InlineData("SEQ0240", "    go finish when falling", "    go finish when «P1 dosed»")]
    [InlineData("SEQ0240", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3 and «P2 dosed»")]
    [InlineData("SEQ0241", "    stop P1", "    run P1 for 2 s at each «LSHH1»")]
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
}
