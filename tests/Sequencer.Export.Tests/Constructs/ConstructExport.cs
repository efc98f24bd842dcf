using Sequencer.Export.Equivalence;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Proof;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>A small unit with the declarations in question: its text must be proved equal, and run in step with the program.</summary>
internal static class ConstructExport
{
    public const string OneStep = """
          step 10 "Only"
            run M1
            limit 10 s then hold "Too long"
            go finish when S1
        """;

    public static DemoExport Of(string declarations, string procedure = OneStep) => new("bench", new SourceText("bench.seq", $"""
        language 1
        unit U "Bench"
        input  LT1  0 .. 10.00 m3  at %IW0  "Level"  bad after 0.3 s
        input  S1  switch  at %IX0.0  "First"
        input  S2  switch  at %IX0.1  "Second"
        input  S3  switch  at %IX0.2  "Third"
        input  S4  switch  at %IX0.3  "Fourth"
        output M1  motor  at %QX0.0  "First motor"   safe stopped
        output M2  motor  at %QX0.1  "Second motor"  safe stopped
        {declarations}
        procedure
        {procedure}

        """));

    public static void IsProvedEqual(DemoExport export)
    {
        EqualityResult result = export.Decide(export.Export.Text, ProofOptions.Default);
        Assert.True(result is ProvedEqual, $"{result}\n{export.Export.Text}");
    }

    /// <summary>A text with one word changed is found to differ: the proof looks at what the construct does.</summary>
    public static void IsFoundDifferent(DemoExport export, string words, string others)
    {
        Assert.Contains(words, export.Export.Text, StringComparison.Ordinal);
        EqualityResult result = export.Decide(export.Export.Text.Replace(words, others, StringComparison.Ordinal), ProofOptions.Default);
        Assert.False(result is ProvedEqual, $"`{others}` for `{words}` was proved equal");
    }
}
