using Sequencer.Language.Tests.Checking;

namespace Sequencer.Language.Tests.Binding;

public sealed class NameCodeTests
{
    [Theory]
    [InlineData("SEQ0201", "alarm A1", "alarm A1 \"High\" when LT1 > 5.000 m3 and «LSHH2»")]
    [InlineData("SEQ0201", "    stop P1", "    stop «Nothing»")]
    [InlineData("SEQ0202", "alarm A1", "alarm «E1» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0202", "alarm A1", "alarm «R1» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0203", "alarm A1", "alarm «e1» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0204", "alarm A1", "alarm «Ton» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0205", "alarm A1", "alarm «A__1» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0205", "alarm A1", "alarm «A1_» \"High\" when LT1 > 5.000 m3")]
    [InlineData("SEQ0206", "alarm A1", "alarm A1 \"High\" when «E1»")]
    [InlineData("SEQ0206", "alarm A1", "alarm A1 \"High\" when «YS1» usable")]
    [InlineData("SEQ0206", "alarm A1", "alarm A1 \"High\" when «XV1» latched")]
    [InlineData("SEQ0206", "    stop P1", "    stop «LT1»")]
    [InlineData("SEQ0206", "output XV1", "output XV1 valve at %QX0.0 \"Inlet\" safe closed confirm «LT1» within 8 s")]
    [InlineData("SEQ0207", "  step 25", "  step «20» \"Done\"\n  limit 2 h then hold \"x\"\n  step 25 \"Done\"")]
    [InlineData("SEQ0208", "    go finish when falling", "    go «21» when LSHH1")]
    [InlineData("SEQ0208", "    limit 2 h then go", "    limit 2 h then go «45» \"x\"")]
    [InlineData("SEQ0208", "alarm A1", "alarm A1 \"High\" when at step «11»")]
    [InlineData("SEQ0210", "input YS1", "input YS1 switch at «%IX0.0» \"Agitator running\"")]
    [InlineData("SEQ0211", "input YS1", "input YS1 switch at «%QX0.1» \"Agitator running\"")]
    [InlineData("SEQ0211", "input YS1", "input YS1 switch at «%IW8» \"Agitator running\"")]
    [InlineData("SEQ0211", "input YS1", "input YS1 switch at «%IX0.99999999999» \"Agitator running\"")]
    [InlineData("SEQ0212", "interlock I2", "interlock I2 \"Unmixed\" P1, «P1» blocked unless YS1")]
    [InlineData("SEQ0212", "  join 25, 30", "  join 25, «25» to 40 when LSHH1")]
    [InlineData("SEQ0213", "interlock I4", "interlock I4 \"Apart\" «P1» exclusive")]
    [InlineData("SEQ0214", "alarm A1", "alarm A1 \"High\" when «P1 proved»")]
    [InlineData("SEQ0215", "alarm A1", "alarm A1 \"High\" when «XV1.total» > 5 L")]
    [InlineData("SEQ0215", "    limit 2 h then go", "    limit 2 h then go 40 \"x\"\n    dose «XV1» pulse 5 s then wait 45 s toward AT1 at end_pH, at most 5 L a batch, no 0.05 pH in 3 pulses")]
    [InlineData("SEQ0216", "    limit 2 h then go", "    limit 2 h then go 40 \"x\"\n    dose P1 pulse 5 s then wait 45 s toward «LT1» at 5.000 m3, at most 5 L a batch, no 0.010 m3 in 3 pulses")]
    [InlineData("SEQ0217", "assume F2", "assume F2 \"Dry\" never LSHH1 and «XV1»")]
    [InlineData("SEQ0217", "assume F2", "assume F2 \"Dry\" never LSHH1 and LT1 < «fill»")]
    [InlineData("SEQ0217", "assume F2", "assume F2 \"Dry\" never «at step 10»")]
    [InlineData("SEQ0218", "    stop P1", "    «close» P1")]
    [InlineData("SEQ0218", "alarm A1", "alarm A1 \"High\" when XV1 «running»")]
    [InlineData("SEQ0218", "output XV1", "output XV1 valve at %QX0.0 \"Inlet\" safe «stopped» confirm ZSO1 within 8 s")]
    [InlineData("SEQ0219", "output AG1", "output AG1 motor at %QX0.1 \"Agitator\" safe stopped confirm YS1, «ZSO1» within 5 s")]
    [InlineData("SEQ0220", "    go finish when falling", "    go 40 when «LSHH1 stays 5 s after the last pulse»")]
    [InlineData("SEQ0221", "reagent ACID", "reagent ACID \"Sulphuric acid\" lowers AT1 opposes «ACID»")]
    public void A_wrong_name_is_told_once_at_its_exact_place(string code, string replaced, string line) =>
        MarkedProgram.Replacing(replaced.TrimStart(), line).ReportsOnly(code);

    [Fact]
    public void A_circle_of_declarations_is_told_once() => MarkedProgram.Of(
        SamplePrograms.Full.Replace("usable only while YS1, bad after 2 s", "usable only while P1", StringComparison.Ordinal)
            .Replace("lowers AT1 opposes CAUSTIC", "lowers «AT1» opposes CAUSTIC", StringComparison.Ordinal)).ReportsOnly("SEQ0209");

    [Fact]
    public void A_name_that_lacks_its_declaration_is_told_once_however_often_it_is_used() => MarkedProgram.Of(
        SamplePrograms.Full.Replace("input PT1 -60.0 .. 0.0 kPa at %IW4 \"Vacuum\"", "alarm A2 \"x\" when «Vacuum9» < -20.0 kPa\nalarm A3 \"x\" when Vacuum9 < -30.0 kPa", StringComparison.Ordinal)
            .Replace("PT1 < -20.0 kPa", "LSHH1", StringComparison.Ordinal)).ReportsOnly("SEQ0201");
}
