namespace Sequencer.Lowering.Tests.Signals;

/// <summary>
/// Strong Kleene logic (S. C. Kleene, Introduction to Metamathematics, 1952, section 64), seen from
/// outside: an interlock <c>while</c> acts on possibly, one <c>unless</c> on not surely.
/// </summary>
public sealed class UnknownTests
{
    private const char False = 'f';
    private const char Unknown = 'u';
    private const char True = 't';

    [Theory]
    [InlineData("and", "fff", "fuu", "fut")]
    [InlineData("or", "fut", "uut", "ttt")]
    public void Two_readings_combine_by_the_truth_tables(string word, string whenFalse, string whenUnknown, string whenTrue)
    {
        string condition = $"LT1 > 5.00 m3 {word} LT2 > 5.00 m3";
        foreach ((char left, string row) in new[] { (False, whenFalse), (Unknown, whenUnknown), (True, whenTrue) })
        {
            foreach ((char right, char expected) in "fut".Zip(row))
            {
                ProgramBench bench = Bench(condition);
                Reading(bench, "LT1", left);
                Reading(bench, "LT2", right);

                Assert.Equal($"{left} {word} {right} = {expected}", $"{left} {word} {right} = {Truth(bench.Scan())}");
            }
        }
    }

    [Theory]
    [InlineData(False, True)]
    [InlineData(Unknown, Unknown)]
    [InlineData(True, False)]
    public void Not_turns_sure_into_impossible_and_leaves_the_unknown(char reading, char expected)
    {
        ProgramBench bench = Bench("not LT1 > 5.00 m3");
        Reading(bench, "LT1", reading);

        Assert.Equal(expected, Truth(bench.Scan()));
    }

    [Fact]
    public void A_switch_decides_over_an_unknown_reading_where_it_can()
    {
        ProgramBench bench = Bench("S2 or LT1 > 5.00 m3");
        Reading(bench, "LT1", Unknown);
        Assert.Equal(Unknown, Truth(bench.Scan()));

        bench.Set("S2.contact", 1);
        Assert.Equal(True, Truth(bench.Scan()));
    }

    [Fact]
    public void An_unknown_reading_lets_no_step_advance()
    {
        ProgramBench bench = BenchPrograms.Started("", """
              step 10 "Wait for the level"
                limit 1 h then hold "Too long"
                go finish when LT1 > 5.00 m3
            """);
        bench.Set("LT1", 900);
        bench.Set("LT1.fault", 1);

        Assert.Equal(1, bench.Scan(20)["U.step10.active"]);
        bench.Set("LT1.fault", 0);
        Assert.Equal(0, bench.Scan()["U.step10.active"]);
    }

    [Fact]
    public void A_reading_is_unknown_while_its_usability_is_not_sure()
    {
        ProgramBench bench = BenchPrograms.Bench("""
            input AT1 0 .. 14.00 pH at %IW6 "pH" usable only while S2
            interlock I1 "Low" M2 blocked while AT1 < 6.00
            """);
        bench.Set("AT1", 700);
        Assert.Equal(1, bench.Scan()["I1.blocks"]);

        bench.Set("S2.contact", 1);
        Assert.Equal(0, bench.Scan()["I1.blocks"]);
    }

    private static ProgramBench Bench(string condition) => BenchPrograms.Bench($"""
        input LT2 0 .. 10.00 m3 at %IW4 "Other level"
        interlock I1 "Possibly"   M2 blocked while {condition}
        interlock I2 "Not surely" M3 blocked unless {condition}
        """);

    private static void Reading(ProgramBench bench, string tag, char truth)
    {
        bench.Set(tag, truth == True ? 900 : 100);
        bench.Set($"{tag}.fault", truth == Unknown ? 1 : 0);
    }

    private static char Truth(ProgramBench bench) => (bench["I1.blocks"], bench["I2.blocks"]) switch
    {
        (0, 1) => False,
        (1, 1) => Unknown,
        (1, 0) => True,
        _ => '?',
    };
}
