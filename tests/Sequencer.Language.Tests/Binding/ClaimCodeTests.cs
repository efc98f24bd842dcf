using Sequencer.Language.Checking;
using Sequencer.Language.Formatting;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Binding;

/// <summary>Each mistake with shared equipment is told once, in the file that makes it, at its place.</summary>
public sealed class ClaimCodeTests
{
    private const int Scan = 100;
    private const string Claim = "claim A.SKID limit 1 min then hold \"Busy\"";

    [Theory]
    [InlineData("SEQ0229", "run A.PS", "run A.PS", "claim A.SKID")]
    [InlineData("SEQ0233", Claim + "\nrun A.PS for 20 s once a batch", "run A.PS for 20 s once a batch", "for a time")]
    [InlineData("SEQ0226", Claim + "\nopen A.XA", "A.XA", "shared")]
    [InlineData("SEQ0226", Claim + "\ndose A.PS amount 1 L once a batch", "A.PS", null)]
    [InlineData("SEQ0223", "claim A.SKED limit 1 min then hold \"Busy\"", "A.SKED", "A.SKID")]
    [InlineData("SEQ0206", "claim A.LTA limit 1 min then hold \"Busy\"", "A.LTA", null)]
    [InlineData("SEQ0124", Claim + "\nclaim A.SKID limit 2 min then stop \"Busy\"", "claim A.SKID limit 2 min then stop \"Busy\"", null)]
    [InlineData("SEQ0110", "claim A.SKID limit 1 min then alarm \"Busy\"", "alarm", null)]
    [InlineData("SEQ0206", Claim + "\nrun MB while A.LTA granted", "A.LTA", null)]
    [InlineData("SEQ0206", Claim + "\nrun MB while A.SKID", "A.SKID", null)]
    public void A_mistake_is_told_at_its_place(string code, string lines, string place, string? mend)
    {
        SiteCheckResult result = Check(A(), Unit("B", 1, "", lines));

        Assert.Empty(result.Files[0].Diagnostics);
        Diagnostic found = Assert.Single(result.Files[1].Diagnostics);
        Assert.Equal((code, place), (found.Code, found.Span.Text.ToString()));
        Assert.Contains(mend ?? "", found.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("SEQ0231", "shared OTHER \"Other\" QS\noutput QS motor at %QX0.6 \"Pump\" safe stopped", "shared OTHER \"Other\" QS")]
    [InlineData("SEQ0233", "shared OTHER \"Other\" QS\noutput QS motor at %QX0.6 \"Pump\" safe stopped, held running", "shared OTHER \"Other\" QS")]
    [InlineData("SEQ0212", "shared OTHER \"Other\" PS", "PS")]
    [InlineData("SEQ0110", "shared OTHER \"Other\" B.MB", ".")]
    public void A_mistake_in_what_is_shared_is_told_where_it_is_declared(string code, string declaration, string place)
    {
        SiteCheckResult result = Check(A(declaration), Unit("B", 1, "", $"{Claim}\nrun A.PS"));

        Diagnostic found = Assert.Single(result.Diagnostics);
        Assert.Equal(code, found.Code);
        if (code is not ("SEQ0231" or "SEQ0233"))
        {
            Assert.Equal(place, found.Span.Text.ToString());
        }

        Assert.Equal("unit1.seq", found.Span.Source.Path);
    }

    [Fact]
    public void A_section_claims_nothing()
    {
        SiteCheckResult result = Check(A(), Unit("B", 1, "", $"{Claim}\nrun A.PS", $"""
            holding
              step 900 "Rest"
                {Claim}
                limit 1 min then go finish "Slow"
                go finish when LTB < 0.100 m3
            """));

        Assert.Equal("SEQ0230", Assert.Single(result.Diagnostics).Code);
    }

    /// <summary>A holds the skid and waits for the water; B, or B and C in turn, hold the water and wait for the skid.</summary>
    [Theory]
    [InlineData("SKID", "SKID WATER", "WATER", "WATER SKID", 2)]
    [InlineData("SKID", "SKID WATER", "SKID", "SKID WATER", 0)]
    [InlineData("SKID", "SKID WATER", "SKID WATER", "SKID", 0)]
    [InlineData("SKID", "WATER", "WATER", "SKID", 0)]
    [InlineData("SKID WATER", "SKID", "WATER SKID", "WATER", 0)]
    [InlineData("SKID WATER?", "SKID", "WATER SKID?", "WATER", 2)]
    public void Circles_of_claims_are_found(string first, string second, string other, string last, int found)
    {
        const string water = "shared WATER \"Water\" QS\noutput QS motor at %QX0.6 \"Pump\" safe stopped";
        SiteCheckResult result = Check(TwoSteps("A", 0, $"{Shared}\n{water}", first, second), TwoSteps("B", 1, "", other, last));

        Assert.Equal(Enumerable.Repeat("SEQ0232", found), result.Diagnostics.Select(diagnostic => diagnostic.Code));
    }

    [Fact]
    public void A_claim_and_what_is_shared_have_one_layout()
    {
        FormatResult formatted = ProgramFormatter.Format(new SourceText("a.seq", A().Replace("claim SKID limit", "claim   SKID  ,limit", StringComparison.Ordinal)));

        Assert.Contains("\n    claim SKID, limit 1 min then hold \"Busy\"\n", formatted.Text, StringComparison.Ordinal);
        Assert.Contains("\nshared SKID \"Skid\" PS\n", formatted.Text, StringComparison.Ordinal);
        Assert.Equal(formatted.Text, ProgramFormatter.Format(new SourceText("a.seq", formatted.Text!)).Text);
    }

    private const string Shared = "output PS motor at %QX0.5 \"Pump\" safe stopped\nshared SKID \"Skid\" PS";

    private static string A(string declaration = "") => Unit("A", 0, $"{Shared}\n{declaration}", "claim SKID limit 1 min then hold \"Busy\"\nrun PS");

    private static SiteCheckResult Check(params string[] units) =>
        SiteChecker.Check([.. units.Select((unit, index) => new SourceText($"unit{index + 1}.seq", unit))], Scan);

    private static string TwoSteps(string letter, int place, string declarations, string first, string second) =>
        Unit(letter, place, declarations, Claims(letter, first), to: "20", more: $"""
              step 20 "Second"
            {Claims(letter, second)}
                limit 30 min then hold "Slow"
                go finish when LT{letter} < 0.100 m3
            """);

    /// <summary>A question mark stands for a claim that is released while held.</summary>
    private static string Claims(string letter, string names) => string.Join('\n', names.Split(' ').Select(name =>
        $"    claim {(letter == "A" ? "" : "A.")}{name.TrimEnd('?')} limit 1 min then hold \"Busy\"{(name.EndsWith('?') ? ", released while held" : "")}"));

    private static string Unit(string letter, int place, string declarations, string lines, string more = "", string to = "finish") => $"""
        language 1
        unit {letter} "Unit"
        input  LT{letter}  0 .. 1.000 m3  at %IW{place}  "Volume"  bad after 2 s
        output X{letter}  valve  at %QX{place}.0  "Inlet"  safe closed
        output M{letter}  motor  at %QX{place}.1  "Motor"  safe stopped
        {declarations}
        procedure
          step 10 "Fill"
            open X{letter}
            run M{letter} while LT{letter} > 0.100 m3
            {lines}
            limit 30 min then hold "Filling slow"
            go {to} when LT{letter} >= 0.800 m3
        {more}

        """;
}
