using System.Collections.Immutable;
using Sequencer.Sites.Insight;

namespace Sequencer.Sites.Tests.Insight;

/// <summary>Requirements that hold because nothing happens, and such as do not.</summary>
public sealed class OccurrenceTests
{
    private const string Program = """
        language 1
        unit U "Bench"

        input LT1  0 .. 10.00 m3  at %IW0    "Level"  bad after 0.2 s
        input S1   switch         at %IX0.0  "Full"
        output M1  motor  at %QX0.0  "Pump 1"  safe stopped
        output M2  motor  at %QX0.1  "Pump 2"  safe stopped

        interlock I1 "Not full"  M2 blocked while S1
        interlock I2 "Not else"  M2 blocked unless S1

        require H1 "Happens"         never M1 and S1 and LT1 > 9.00 m3
        require H2 "Vacuous part"    never M2 and S1
        require H3 "Vacuous cause"   after M2 not M1 within 2 s
        require H4 "Cause happens"   after S1 stays 0.5 s, not M2 within 1 s
        require H5 "Vacuous while"   always S1 while M2
        require H6 "One plain fact"  never M2

        procedure
          step 10 "Run"
            run M1 while not S1
            run M2
            limit 1 h then hold "Slow"
            go finish when S1 stays 0.3 s
        """;

    private static readonly InsightBench Bench = new(Program);

    private static readonly ImmutableArray<Occurrence> All = Occurrences.Of(Bench.Site, Bench.Questions);

    [Theory]
    [InlineData("H2", "M2", false)]
    [InlineData("H2", "S1", true)]
    [InlineData("H3", "M2", false)]
    [InlineData("H4", "S1 stays 0.5 s", true)]
    [InlineData("H5", "M2", false)]
    [InlineData("H1", "M1", true)]
    public void Each_part_is_found_or_proved_never_to_happen(string requirement, string words, bool happens) =>
        Assert.Equal(happens, All.Single(one => one.Requirement == requirement && one.Words == words).Happens);

    [Fact]
    public void One_plain_fact_has_no_part_to_ask_for() => Assert.DoesNotContain(All, one => one.Requirement == "H6");
}
