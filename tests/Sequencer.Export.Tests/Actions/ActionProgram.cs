using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Actions;

/// <summary>A small program around one construct: its system, its text and what the two are to each other.</summary>
internal sealed class ActionProgram
{
    private const int ScanMilliseconds = 100;

    public ActionProgram(string declarations, string procedure)
    {
        string text = $"""
            language 1
            unit U "Bench"
            input  LT1  0 .. 10.00 m3  at %IW0  "Level"  bad after 0.3 s
            input  S1  switch  at %IX0.0  "First"
            input  S2  switch  at %IX0.1  "Second"
            input  S3  switch  at %IX0.2  "Third"
            output M1  motor  at %QX0.0  "First motor"   safe stopped
            output M2  motor  at %QX0.1  "Second motor"  safe stopped
            output X1  valve  at %QX0.3  "Valve"         safe closed
            {declarations}
            procedure
            {procedure}

            """;
        CheckResult result = ProgramChecker.Check(new SourceText("bench.seq", text), ScanMilliseconds);
        UnitProgram program = result.Program is { } found && !result.HasErrors
            ? found
            : throw new ArgumentException(DiagnosticRenderer.Render(result.Diagnostics));
        SiteProgram site = new("bench", ScanMilliseconds, [program]);
        System = SiteLowering.Lower(site);
        Export = StructuredTextWriter.Write(site, new ExportHeader("bench", "A", "none"));
    }

    public TransitionSystem System { get; }

    public StructuredTextExport Export { get; }

    public TransitionSystem Read(string text)
    {
        SourceText source = new("text.st", text);
        ReadingResult read = StructuredTextReader.Read(source, new ReadingOptions(Export.Blocks[0].FunctionBlock, ScanMilliseconds));
        return read.System ?? throw new InvalidOperationException(DiagnosticRenderer.Render(read.Diagnostics) + text);
    }

    public EqualityResult Decide(string text) =>
        TextEquality.Decide(System, Read(text), Export.Blocks[0], ProofOptions.Default, CancellationToken.None);

    public Verdict Prove(string requirement) =>
        Prover.Decide(System, System.Requirements.Single(each => each.Name == requirement), ProofOptions.Default, null, CancellationToken.None);
}
