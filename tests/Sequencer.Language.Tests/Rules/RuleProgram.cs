using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Rules;

/// <summary>Checks whole programs at a scan of 100 ms.</summary>
internal static class RuleProgram
{
    private const int ScanMilliseconds = 100;

    /// <summary>The code is reported once, at exactly those words, and nothing else is.</summary>
    public static void Reports(string code, string words, string program)
    {
        CheckResult result = Check(program);

        Assert.Equal($"{code} at: {words}", string.Join('\n', result.Diagnostics.Select(found => $"{found.Code} at: {found.Span.Text}")));
        Assert.All(result.Diagnostics, found => Assert.True(found.Message.Length > 0 && found.Reason.Length > 0 && found.Mend.Length > 0));
    }

    /// <summary>Codes and words, a line each, as <c>SEQ0124 at: words</c>, in the order of the text.</summary>
    public static void Tells(string told, string program) =>
        Assert.Equal(told, string.Join('\n', Check(program).Diagnostics.Select(found => $"{found.Code} at: {found.Span.Text}")));

    public static void IsSilentOn(string program) => Assert.Equal("", Told(Check(program)));

    public static string Told(CheckResult result) => DiagnosticRenderer.Render(result.Diagnostics);

    private static CheckResult Check(string program) => ProgramChecker.Check(new SourceText("program.seq", program), ScanMilliseconds);
}
