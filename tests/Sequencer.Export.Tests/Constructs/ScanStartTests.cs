using Sequencer.Export.Tests.Equivalence;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>What a condition names is what it was at the start of the scan, though the text changes it above: answers, latches, facts, counts.</summary>
public sealed class ScanStartTests
{
    /// <summary>Each of these stops a motor in the end: what stops nothing is not in the program's system at all.</summary>
    private const string Asking = """
          step 10 "Ask"
            run M1
            prompt Q1 "Clear?" answers "clear", "cloudy" role Operator, limit 1 s then hold "Nobody answered"
            limit 10 s then hold "Too long"
            go 20 when Q1 answered "clear"
          step 20 "Rest"
            run M1
            limit 10 s then hold "Too long"
            go finish when S1
        """;

    [Theory]
    [InlineData("latch L1 \"Cleared\" set when at step 10 and Q1 answered \"clear\" clear when S2 retained\ninterlock I1 \"So\" M1 blocked while L1")]
    [InlineData("latch L1 \"Cloudy\" set when S2 clear when Q1 answered \"cloudy\"\ninterlock I1 \"So\" M1 blocked while L1")]
    [InlineData("interlock I1 \"Cloudy\" M1 blocked while Q1 answered \"cloudy\"")]
    [InlineData("alarm A1 \"Cloudy\" when Q1 answered \"cloudy\", priority low, consequence \"None worth telling\", response \"Look\" within 1 h")]
    [InlineData("fact F1 \"Clear\" when Q1 answered \"clear\"\ninterlock I1 \"So\" M1 blocked while F1")]
    [InlineData("count N1 \"Clear ones\" 0 .. 9.0 mm each Q1 answered \"clear\" adds 1.0 mm\ninterlock I1 \"Many\" M1 blocked while N1 > 2.0 mm")]
    public void An_answer_counts_from_the_next_scan_on(string declaration) => ConstructExport.IsProvedEqual(ConstructExport.Of(declaration, Asking));

    [Theory]
    [InlineData("fact F1 \"So\" when L1\ninterlock I1 \"So\" M1 blocked while F1")]
    [InlineData("count N1 \"Times\" 0 .. 9.0 mm each L1 adds 1.0 mm\ninterlock I1 \"Many\" M1 blocked while N1 > 2.0 mm")]
    [InlineData("latch L2 \"Second\" set when L1 clear when not L1\ninterlock I1 \"So\" M1 blocked while L2")]
    [InlineData("count N1 \"Times\" 0 .. 9.0 mm each S4 adds 1.0 mm\nlatch L2 \"Many\" set when N1 > 2.0 mm clear when S2\ninterlock I1 \"So\" M1 blocked while L2")]
    [InlineData("fact F1 \"So\" when S4\nlatch L2 \"Second\" set when F1 clear when S2\nfact F2 \"Both\" when F1 and L2\ninterlock I1 \"So\" M1 blocked while F2")]
    public void What_is_remembered_counts_from_the_next_scan_on(string declarations) =>
        ConstructExport.IsProvedEqual(ConstructExport.Of($"latch L1 \"First\" set when S3 clear when S2\n{declarations}"));

    [Fact]
    public void An_answer_taken_a_scan_early_is_found()
    {
        DemoExport export = ConstructExport.Of("latch L1 \"Cleared\" set when Q1 answered \"clear\" clear when S2\ninterlock I1 \"So\" M1 blocked while L1", Asking);
        ConstructExport.IsFoundDifferent(export, "L1_Sets := (Q1_Answer = 1)", "L1_Sets := (Q1_Answer_Now = 1)");
    }
}
