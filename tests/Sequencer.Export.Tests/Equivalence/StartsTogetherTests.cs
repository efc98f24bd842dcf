using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>Units that start one another, and counts that others read, as text and as program.</summary>
public sealed class StartsTogetherTests
{
    private const int ScanMilliseconds = 100;
    [Fact]
    public void Starts_are_proved_equal_to_the_programs()
    {
        (TransitionSystem system, StructuredTextExport export) = Write();
        ReadBackResult read = ReadBack.Run(system, export, 20_000, 1, CancellationToken.None);
        Assert.True(read.Agrees, $"{read.Difference} {string.Join('\n', read.Diagnostics.Select(diagnostic => diagnostic.Message))}");

        ImmutableArray<EqualityResult> results = TextEquality.DecideAll(system, export, read.Systems, ProofOptions.Default, CancellationToken.None);

        EqualityResult result = Assert.Single(results);
        ProvedEqual? proved = result as ProvedEqual;
        Assert.True(proved is not null, $"{result}");
        Assert.All([SmtSolver.Z3, SmtSolver.Cvc5], solver => solver.Discharge(proved.Certificate));
    }

    [Theory]
    [InlineData("AND (NOT Asked_A_Taken)", "")]
    [InlineData("Asked_A_Taken := A_Ask_B_Stands AND", "Asked_A_Taken := ")]
    [InlineData("B_C_Shown := B.Shown_C;", "B_C_Shown := 0;")]
    public void A_changed_line_is_found(string line, string changed)
    {
        (TransitionSystem system, StructuredTextExport export) = Write();
        Assert.Contains(line, export.Text, StringComparison.Ordinal);
        StructuredTextExport altered = export with { Text = export.Text.Replace(line, changed, StringComparison.Ordinal) };

        ReadBackResult read = ReadBack.Run(system, altered, 20_000, 1, CancellationToken.None);

        Assert.False(read.Agrees && TextEquality.DecideAll(system, altered, read.Systems, ProofOptions.Default, CancellationToken.None).All(result => result is ProvedEqual));
    }

    private static (TransitionSystem System, StructuredTextExport Export) Write()
    {
        SiteCheckResult result = SiteChecker.Check([new SourceText("a.seq", First), new SourceText("b.seq", Second)], ScanMilliseconds);
        Assert.True(result.Units.Length == 2, DiagnosticRenderer.Render(result.Diagnostics));
        SiteProgram site = new("bench", ScanMilliseconds, result.Units);
        return (SiteLowering.Lower(site), StructuredTextWriter.Write(site, new ExportHeader("bench", "A", "none")));
    }

    private const string First = """
        language 1
        unit A "First"
        input  LTA  0 .. 1.000 m3  at %IW0  "Level"  bad after 0.3 s
        input  SA  switch  at %IX0.0  "Ready"
        output MA  motor  at %QX0.0  "Motor"  safe stopped
        procedure
          step 10 "One"
            run MA while B.D < 5.0 mm and B.LTB > 0.200 m3
            limit 2 s then hold "Too long"
            go 20 when SA
          step 20 "Two" only if LTA > 0.500 m3
            ask B to start
            limit 2 s then abort "Too long"
            go 30 when B started
          step 30 "Three"
            run MA while B.C < 0.030 m3
            limit 2 s then hold "Too long"
            go finish when SA stays 1 s

        """;

    private const string Second = """
        language 1
        unit B "Second"
        input  LTB  0 .. 1.000 m3  at %IW1  "Level"  bad after 0.3 s
        input  SB  switch  at %IX1.0  "Pulse"
        output MB  motor  at %QX1.0  "Motor"  safe stopped
        parameter depth = 0.500 m3 from 0.200 m3 to 0.900 m3
        calibrate LTB at most 2 s role Maintenance "Set by hand"
        count C "Out" 0 .. 0.100 m3 each SB adds 0.010 m3, over 2 s in 2 parts
        count D "Coat" 0 .. 9.0 mm each SB takes 1.0 mm, set to 9.0 mm when at step 10
        start asked by A
        start only when LTB > 0.100 m3 "Empty"
        procedure
          step 10 "One"
            run MB
            limit 10 s then stop "Too long"
            go finish when LTB > depth stays 1 s

        """;
}
