using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>
/// The program of <c>spec/constructs.md</c>, which shows every construct once: its text, read back, runs in step with it. The
/// constructs are proved equal one by one in the other tests of this project; all together the proof takes too long for them.
/// </summary>
public sealed class AllConstructsTests
{
    [Fact]
    public void The_text_of_all_constructs_together_runs_in_step_with_the_program()
    {
        DemoExport export = Program();
        ReadBackResult result = ReadBack.Run(export.System, export.Export, scans: 20_000, seed: 3, CancellationToken.None);
        Assert.True(result.Difference is null && result.Diagnostics.IsEmpty, $"{result.Difference}{string.Join('\n', result.Diagnostics)}");
        Assert.True(result.Compared > 100, $"only {result.Compared} variables are compared");
    }

    [Theory]
    [InlineData("LSHH := ((LSHH1 AND LSHH2)", "LSHH := ((LSHH1 OR LSHH2)")]
    public void A_change_in_one_of_many_constructs_is_found_out(string words, string others)
    {
        DemoExport export = Program();
        Assert.Contains(words, export.Export.Text, StringComparison.Ordinal);
        StructuredTextExport changed = export.Export with { Text = export.Export.Text.Replace(words, others, StringComparison.Ordinal) };
        Assert.NotNull(ReadBack.Run(export.System, changed, scans: 20_000, seed: 3, CancellationToken.None).Difference);
    }

    private static DemoExport Program()
    {
        const string fence = "```seq clean\n";
        string page = File.ReadAllText(RepositoryPath.At("spec", "constructs.md")).Replace("\r\n", "\n", StringComparison.Ordinal);
        int start = page.IndexOf(fence, StringComparison.Ordinal) + fence.Length;
        return new DemoExport("constructs", new SourceText("constructs.seq", page[start..page.IndexOf("```", start, StringComparison.Ordinal)]));
    }
}
