using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Writing;

/// <summary>Several programs as one site and its text.</summary>
internal static class SiteExport
{
    public const int ScanMilliseconds = 100;

    /// <summary>Two units: each drives a pump, the second looks at the first.</summary>
    public const string First = """
        language 1
        unit A "First tank"
        input  LT1  0 .. 5.00 m3  at %IW0  "First level"  bad after 0.3 s
        input  S1  switch  at %IX0.0  "First switch"
        output P1  motor  at %QX0.0  "First pump"  safe stopped
        output SC1  10.0 .. 60.0 %  at %QW0  "First speed"  safe 10.0 %
        interlock I1 "Dry" P1 blocked unless LT1 > 0.50 m3
        procedure
          step 10 "Pump"
            run P1
            set SC1 to 35.0 %
            limit 10 s then hold "Too long"
            go finish when S1

        """;

    public const string Second = """
        language 1
        unit B "Second tank"
        input  S2  switch  at %IX1.0  "Second switch"
        output P2  motor  at %QX1.0  "Second pump"  safe stopped
        interlock I1 "First is full" P2 blocked while A.LT1 > 4.00 m3
        procedure
          step 10 "Pump"
            run P2
            limit 10 s then hold "Too long"
            go finish when S2

        """;

    public static string Of(params ReadOnlySpan<string> programs) => Of(TextDialect.Default, programs).Text;

    public static StructuredTextExport Of(TextDialect dialect, params ReadOnlySpan<string> programs) =>
        StructuredTextWriter.Write(Site(programs), new ExportHeader("bench", "A", "none"), dialect);

    public static StructuredTextExport Whole(params ReadOnlySpan<string> programs) => Of(TextDialect.Default, programs);

    public static SiteProgram Site(params ReadOnlySpan<string> programs)
    {
        SourceText[] sources = [.. programs.ToArray().Select((text, index) => new SourceText(FormattableString.Invariant($"program{index + 1}.seq"), text))];
        SiteCheckResult result = SiteChecker.Check(sources, ScanMilliseconds);
        Assert.True(result.Units.Length == sources.Length, DiagnosticRenderer.Render(result.Diagnostics));
        return new SiteProgram("bench", ScanMilliseconds, result.Units);
    }
}
