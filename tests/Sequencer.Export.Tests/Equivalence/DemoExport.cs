using System.Text.RegularExpressions;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>A program, its system and its exported text.</summary>
internal sealed partial class DemoExport
{
    private const int ScanMilliseconds = 100;

    public DemoExport(string folder, string file, TextDialect? dialect = null)
        : this(folder, new SourceText(file, File.ReadAllText(RepositoryPath.Site(folder, file))), dialect)
    {
    }

    /// <summary>Any one program.</summary>
    public DemoExport(string folder, SourceText text, TextDialect? dialect = null)
    {
        CheckResult result = ProgramChecker.Check(text, ScanMilliseconds);
        UnitProgram program = result.Program ?? throw new InvalidOperationException(DiagnosticRenderer.Render(result.Diagnostics));
        SiteProgram site = new(folder, ScanMilliseconds, [program]);
        System = SiteLowering.Lower(site);
        Export = StructuredTextWriter.Write(site, new ExportHeader(folder, "A", "none"), dialect ?? TextDialect.Default);
    }

    public TransitionSystem System { get; }

    public StructuredTextExport Export { get; }

    public ExportedBlock Block => Export.Blocks[0];

    public string WithoutComments => Comment().Replace(Export.Text, " ");

    /// <summary>The system of a text of the site's block; null where it cannot be read.</summary>
    public TransitionSystem? Read(string text) =>
        StructuredTextReader.Read(new SourceText("text.st", text), new ReadingOptions(Block.FunctionBlock, ScanMilliseconds)).System;

    public EqualityResult Decide(string text, ProofOptions options) =>
        TextEquality.Decide(System, Read(text) ?? throw new InvalidOperationException("the text cannot be read"), Block, options, CancellationToken.None);

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex Comment();
}
