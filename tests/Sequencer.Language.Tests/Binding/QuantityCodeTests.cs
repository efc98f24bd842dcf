using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Binding;

public sealed class QuantityCodeTests
{
    [Theory]
    [InlineData("SEQ0301", "alarm A1", "alarm A1 \"High\" when LT1 > «5 min»")]
    [InlineData("SEQ0301", "alarm A1", "alarm A1 \"High\" when LT1 > «AT1»")]
    [InlineData("SEQ0301", "alarm A1", "alarm A1 \"High\" when LT1 + «2.0 kPa» > 5.000 m3")]
    [InlineData("SEQ0302", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 «gallons»")]
    [InlineData("SEQ0302", "input PT1", "input PT1 -60.0 .. 0.0 «kpa» at %IW4 \"Vacuum\"")]
    [InlineData("SEQ0303", "    expect", "    expect «12 m3»")]
    [InlineData("SEQ0303", "output P1", "output P1 motor at %QX0.2 \"Acid pump\" safe stopped delivers ACID at «0.20 L»")]
    [InlineData("SEQ0304", "alarm A1", "alarm A1 \"High\" when LT1 > «5.000»")]
    [InlineData("SEQ0305", "alarm A1", "alarm A1 \"High\" when LT1 > «4.5005 m3»")]
    [InlineData("SEQ0305", "alarm A1", "alarm A1 \"High\" when AT1 within «4.205» .. 5.00")]
    [InlineData("SEQ0305", "alarm A1", "alarm A1 \"High\" when LT1 > fill + «0.0005 m3»")]
    [InlineData("SEQ0306", "    expect", "    expect «0.0005 s»")]
    [InlineData("SEQ0307", "    expect", "    expect «0 min»")]
    [InlineData("SEQ0307", "alarm A1", "alarm A1 \"High\" when LSHH1 stays «-2 s»")]
    [InlineData("SEQ0308", "    expect", "    expect «600 h»")]
    [InlineData("SEQ0308", "    expect", "    expect «999999999999999 h»")]
    [InlineData("SEQ0309", "input PT1", "input PT1 «0.0 .. -60.0» kPa at %IW4 \"Vacuum\"")]
    [InlineData("SEQ0309", "parameter fill", "parameter fill = 4.500 m3 from «5.000 m3 to 3.000 m3»")]
    [InlineData("SEQ0310", "parameter fill", "parameter fill = «5.500 m3» from 3.000 m3 to 5.000 m3")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «LT1 > 6.000 m3»")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «LT1 >= 0.000 m3»")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «5 L < 6 L»")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «P1.total >= 0 L»")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «LT1 - LT1 > 0.500 m3»")]
    [InlineData("SEQ0311", "alarm A1", "alarm A1 \"High\" when «AT1 within 14.50 .. 15.00»")]
    [InlineData("SEQ0312", "alarm A1", "alarm A1 \"High\" when LT1 > «fill + 2.000 m3»")]
    [InlineData("SEQ0313", "    limit 2 h then go", "    dose P2 pulse «0.25 s» then wait 5 s toward AT1 at end_pH, at most 5 L a batch, no 0.05 pH in 3 pulses\n    limit 2 h then go 40 \"x\"")]
    [InlineData("SEQ0314", "input PT1", "input PT1 «-60.0 .. 0.000000000» kPa at %IW4 \"Vacuum\"")]
    [InlineData("SEQ0314", "input PT1", "input PT1 «-60.0 .. 13361.8» kPa at %IW4 \"Vacuum\"")]
    [InlineData("SEQ0315", "alarm A1", "alarm A1 \"High\" when AT1 within «end_pH + 0.20 .. end_pH - 0.30»")]
    [InlineData("SEQ0315", "alarm A1", "alarm A1 \"High\" when AT1 within «end_pH .. 8.00»")]
    [InlineData("SEQ0316", "assume F1", "assume F1 \"Filling rate\" LT1 rises at most «0 m3/min»")]
    [InlineData("SEQ0316", "output P1", "output P1 motor at %QX0.2 \"Acid pump\" safe stopped delivers ACID at «0.00 L/min»")]
    [InlineData("SEQ0317", "  step 30", "  step «0» \"Stir\"")]
    [InlineData("SEQ0317", "require H5", "require H5 \"Off\" after LSHH1 P1 stopped within «99999999» scans")]
    [InlineData("SEQ0318", "alarm A1", "alarm A1 \"High\" when «LT1»")]
    [InlineData("SEQ0318", "alarm A1", "alarm A1 \"High\" when «LT1 + 1.000 m3»")]
    [InlineData("SEQ0319", "alarm A1", "alarm A1 \"High\" when LT1 > («LSHH1 or YS1»)")]
    [InlineData("SEQ0320", "assume F1", "assume F1 \"Filling rate\" LT1 rises at most 0.40 «L»")]
    [InlineData("SEQ0320", "assume F1", "assume F1 \"Filling rate\" LT1 rises at most 0.40 «pH/min»")]
    public void A_wrong_amount_is_told_once_at_its_exact_place(string code, string replaced, string line) =>
        MarkedProgram.Replacing(replaced.TrimStart(), line).ReportsOnly(code);

    [Fact]
    public void The_nearest_values_on_the_resolution_are_offered()
    {
        Text.Diagnostic only = Assert.Single(MarkedProgram.Replacing("alarm A1", "alarm A1 \"High\" when LT1 > 4.5005 m3").Check());
        Assert.Contains("write `4.5 m3` or `4.501 m3`", only.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("alarm A1 \"High\" when LT1 > 4500 L")]
    [InlineData("alarm A1 \"High\" when PT1 < -0.2 bar")]
    [InlineData("alarm A1 \"High\" when AT1 within end_pH - 0.30 .. end_pH + 0.20")]
    [InlineData("alarm A1 \"High\" when AT1 > 7 and LT1 within 0.000 m3 .. 0.500 m3")]
    [InlineData("alarm A1 \"High\" when P1.total > 0.7 L")]
    public void A_sound_comparison_is_not_complained_of(string line) => Assert.Empty(MarkedProgram.Replacing("alarm A1", line).Check());
}
