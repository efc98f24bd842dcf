using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Binding;

/// <summary>Each mistake between units is told once, in the file that makes it, at its place.</summary>
public sealed class UnitCodeTests
{
    private const int Scan = 100;

    [Theory]
    [InlineData("SEQ0222", "", "interlock I1 \"Apart\" XB blocked while AA is Held", "AA", "`A`")]
    [InlineData("SEQ0222", "", "interlock I1 \"Apart\" XB blocked while C.XA", "C.XA", null)]
    [InlineData("SEQ0222", "", "interlock I1 \"Apart\" XB blocked while LTB.XA", "LTB.XA", null)]
    [InlineData("SEQ0223", "", "interlock I1 \"Apart\" XB blocked while A.LTB > 0.500 m3", "A.LTB", "A.LTA")]
    [InlineData("SEQ0223", "", "interlock I1 \"Apart\" XB blocked while A.FULL", "A.FULL", null)]
    [InlineData("SEQ0208", "", "interlock I1 \"Apart\" XB blocked while A at step 11", "11", "10")]
    [InlineData("SEQ0224", "parameter fill = 0.800 m3 from 0.500 m3 to 0.900 m3", "interlock I1 \"Apart\" XB blocked while LTB > A.fill", "A.fill", null)]
    [InlineData("SEQ0206", "", "interlock I1 \"Apart\" XB blocked while A.LTA latched", "A.LTA", null)]
    [InlineData("SEQ0225", "input ZSA switch at %IX0.0 \"Open\"\noutput YA valve at %QX0.2 \"Drain\" safe open, confirm ZSA within 5 s", "interlock I1 \"Apart\" XB blocked while A.YA proved", "A.YA proved", null)]
    [InlineData("SEQ0226", "", "interlock I1 \"Apart\" A.XA blocked while XB", "A.XA", null)]
    [InlineData("SEQ0227", "", "output XA valve at %QX0.2 \"Inlet\" safe open", "output XA valve at %QX0.2 \"Inlet\" safe open", null)]
    [InlineData("SEQ0227", "", "output xA valve at %QX0.2 \"Inlet\" safe open", "output xA valve at %QX0.2 \"Inlet\" safe open", null)]
    [InlineData("SEQ0210", "", "output YB valve at %QX0.0 \"Drain\" safe open", "%QX0.0", null)]
    [InlineData("SEQ0217", "", "assume A1 \"Level\" never A.LTA > 0.900 m3", "A.LTA", null)]
    [InlineData("SEQ0301", "", "interlock I1 \"Apart\" XB blocked while A.LTA > 5 min", "5 min", null)]
    public void A_mistake_is_told_at_its_place(string code, string first, string second, string place, string? near)
    {
        SiteCheckResult result = Check(first, second);

        Assert.DoesNotContain(result.Files[0].Diagnostics, diagnostic => diagnostic.Severity == Severity.Error);
        Diagnostic found = Assert.Single(result.Files[1].Diagnostics, diagnostic => diagnostic.Severity == Severity.Error);
        Assert.Equal((code, place), (found.Code, found.Span.Text.ToString()));
        if (near is not null)
        {
            Assert.Contains(near, found.Mend, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_circle_of_facts_is_told_in_both_units()
    {
        SiteCheckResult result = Check("fact F \"First\" when B.G", "fact G \"Second\" when A.F");

        Assert.All(result.Files, file => Assert.Equal("SEQ0228", Assert.Single(file.Diagnostics).Code));
    }

    [Fact]
    public void What_another_unit_reads_is_not_called_unread()
    {
        SiteCheckResult result = Check(
            "input SA switch at %IX0.0 \"Ready\"\nlatch L \"Seen\" set when LTA > 0.500 m3 clear when LTA < 0.100 m3",
            "interlock I1 \"Apart\" XB blocked while A.SA or A.L");

        Assert.Empty(result.Diagnostics);
    }

    /// <summary>A name of a unit that cannot be read is nobody's mistake but that unit's.</summary>
    [Fact]
    public void A_broken_line_in_one_unit_is_not_told_in_another()
    {
        SiteCheckResult result = Check("input SA swich at %IX0.0 \"Ready\"", "interlock I1 \"Apart\" XB blocked while A.SA");

        Assert.NotEmpty(result.Files[0].Diagnostics);
        Assert.Empty(result.Files[1].Diagnostics);
    }

    [Fact]
    public void The_own_units_name_before_a_point_is_the_own_name() =>
        Assert.Empty(Check("", "interlock I1 \"Apart\" XB blocked unless B.LTB usable and B at step 10").Diagnostics);

    private static SiteCheckResult Check(string first, string second) => SiteChecker.Check(
        [new SourceText("a.seq", Unit("A", 0, first)), new SourceText("b.seq", Unit("B", 1, second))], Scan);

    private static string Unit(string letter, int place, string declarations) => $"""
        language 1
        unit {letter} "Unit"
        input  LT{letter}  0 .. 1.000 m3  at %IW{place}  "Volume"  bad after 2 s
        output X{letter}  valve  at %QX{place}.0  "Inlet"  safe closed
        {declarations}
        procedure
          step 10 "Fill"
            open X{letter}
            limit 30 min then hold "Filling slow"
            go finish when LT{letter} >= 0.800 m3

        """;
}
