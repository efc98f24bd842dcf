using Sequencer.Export.Equivalence;
using Sequencer.Export.Tests.Constructs;
using Sequencer.Proof;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>Exported text that somebody edited.</summary>
public sealed class TextComparisonTests
{
    private const string Declarations = """
        parameter fill = 5.00 m3 from 4.00 m3 to 6.00 m3
        trip T1 "Low" when LT1 < 1.00 m3 stays 2 s then hold, if bad hold
        latch SEEN "Seen" set when S2 clear when S3
        interlock I1 "Block" M1 blocked while S2
        """;

    private const string Procedure = """
          step 10 "Fill"
            run M1
            limit 10 s then hold "Too long"
            go 20 when LT1 > fill stays 0.5 s
          step 20 "Rest"
            run M2 while S4
            limit 10 s then hold "Too long"
            go finish when S1
        """;

    private static readonly Lazy<DemoExport> Bench = new(() => ConstructExport.Of(Declarations, Procedure));

    [Theory]
    [InlineData("one-pit", "pit.seq")]
    public void Without_layout_comments_and_any_of_its_names_it_is_proved_equal_by_the_map(string folder, string file)
    {
        DemoExport site = new(folder, file);
        RenamedText renamed = new(site.Export.Text);
        Assert.DoesNotContain("Branch1", renamed.Text, StringComparison.OrdinalIgnoreCase);

        ReadText read = TextComparison.Read(site.System, site.Export with { Blocks = [renamed.Renamed(site.Block)] }, new SourceText("edited.st", renamed.Text), CancellationToken.None);
        EqualityResult result = TextEquality.Decide(site.System, Assert.Single(read.Systems), renamed.Renamed(site.Block), ProofOptions.Default, CancellationToken.None);

        Assert.True(result is ProvedEqual, $"{result}");
    }

    [Fact]
    public void Names_that_nobody_gave_are_guessed_and_the_proof_decides()
    {
        (EqualityResult result, int guessed) = Compare(new RenamedText(Bench.Value.Export.Text).Text);
        Assert.True(result is ProvedEqual, $"{result}");
        Assert.True(guessed > Bench.Value.System.Inputs.Length, $"only {guessed} were guessed");
    }

    [Fact]
    public void A_changed_constant_is_told_with_scan_values_and_both_places()
    {
        (EqualityResult result, _) = Compare(Edited("Step10_Clock >= 100", "Step10_Clock >= 90"));
        ProvedDifferent different = Assert.IsType<ProvedDifferent>(result, exactMatch: false);
        Assert.True(different.Difference.Scan > 1);
        Assert.NotEqual(different.Difference.ReferenceValue, different.Difference.OtherValue);
        Assert.Equal("bench.seq", different.InProgram.Source.Path);
        Assert.Equal("edited.st", different.InText.Source.Path);
    }

    [Fact]
    public void Statements_whose_order_does_not_matter_may_change_places()
    {
        string first = Bench.Value.Export.Text.Split('\n').Single(line => line.StartsWith("SEEN_Sets := ", StringComparison.Ordinal));
        string second = Bench.Value.Export.Text.Split('\n').Single(line => line.StartsWith("SEEN_Clears := ", StringComparison.Ordinal));
        string text = Edited($"{first}\n{second}", $"{second}\n{first}");
        (EqualityResult result, int guessed) = Compare(text);
        Assert.True(result is ProvedEqual, $"{result}");
        Assert.Equal(0, guessed);
    }

    [Fact]
    public void An_output_that_is_left_out_is_undecided()
    {
        string text = string.Join('\n', Bench.Value.Export.Text.Split('\n').Select(line =>
            line.StartsWith("  M2 ", StringComparison.Ordinal) && line.Contains(": BOOL", StringComparison.Ordinal) ? $"END_VAR VAR\n{line}\nEND_VAR VAR_OUTPUT" : line))
            .Replace(":= U.M2;", ":= FALSE;", StringComparison.Ordinal);
        (EqualityResult result, _) = Compare(text);
        Assert.True(result is EqualityUndecided { Reason: var reason } && reason.Contains("M2", StringComparison.Ordinal), $"{result}");
    }

    [Fact]
    public void A_text_that_cannot_be_read_has_diagnostics_and_no_system()
    {
        ReadText read = TextComparison.Read(Bench.Value.System, Bench.Value.Export, new SourceText("edited.st", Edited("SEEN_Sets := ", "SEEN_Sets = ")), CancellationToken.None);
        Assert.Empty(read.Systems);
        Assert.Contains(read.Diagnostics, diagnostic => diagnostic.Severity == Severity.Error && diagnostic.Span.Source.Path == "edited.st");
    }

    private static (EqualityResult Result, int Guessed) Compare(string text)
    {
        DemoExport bench = Bench.Value;
        ReadText read = TextComparison.Read(bench.System, bench.Export, new SourceText("edited.st", text), CancellationToken.None);
        Assert.True(read.Systems.Length == 1, DiagnosticRenderer.Render(read.Diagnostics));
        (var results, var guessed) = TextComparison.Decide(bench.System, bench.Export, read, ProofOptions.Default, () => [], CancellationToken.None);
        return (Assert.Single(results), guessed.Length);
    }

    private static string Edited(string words, string others)
    {
        Assert.Contains(words, Bench.Value.Export.Text, StringComparison.Ordinal);
        return Bench.Value.Export.Text.Replace(words, others, StringComparison.Ordinal);
    }
}
