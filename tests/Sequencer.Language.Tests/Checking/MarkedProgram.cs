using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

/// <summary>
/// <see cref="SamplePrograms.Full"/> with one line changed; the guillemets in the new line (taken out before
/// checking) mark what the one diagnostic must point at.
/// </summary>
internal sealed class MarkedProgram
{
    private const int Scan = 100;

    private MarkedProgram(string marked)
    {
        int start = marked.IndexOf('«', StringComparison.Ordinal);
        int end = marked.IndexOf('»', StringComparison.Ordinal) - 1;
        Text = SamplePrograms.Source(marked.Replace("«", string.Empty, StringComparison.Ordinal).Replace("»", string.Empty, StringComparison.Ordinal));
        Expected = start < 0 ? default : TextSpan.Between(start, end);
    }

    public SourceText Text { get; }

    public TextSpan Expected { get; }

    /// <summary>The line that begins with <paramref name="start"/> (blanks aside) becomes <paramref name="line"/>, which may be several.</summary>
    public static MarkedProgram Replacing(string start, string line)
    {
        string[] lines = SamplePrograms.Full.Split('\n');
        int index = Array.FindIndex(lines, known => known.TrimStart().StartsWith(start, StringComparison.Ordinal));
        Assert.True(index >= 0, $"no line begins with {start}");
        lines[index] = line;
        return new MarkedProgram(string.Join('\n', lines));
    }

    public static MarkedProgram Of(string marked) => new(marked);

    /// <summary>What the reader and the binder find; the rules have their own tests.</summary>
    public ImmutableArray<Diagnostic> Check() =>
        [.. ProgramChecker.Check(Text, Scan).Diagnostics.Where(diagnostic => string.CompareOrdinal(diagnostic.Code, "SEQ0400") < 0)];

    public void ReportsOnly(string code)
    {
        ImmutableArray<Diagnostic> found = Check();
        string shown = DiagnosticRenderer.Render(found);
        Assert.True(found.Length == 1, $"one diagnostic expected:\n{shown}");
        Assert.True(found[0].Code == code, $"{code} expected:\n{shown}");
        Assert.True(found[0].Span.Span == Expected, $"{Expected} expected, {found[0].Span.Span} found:\n{shown}");
        Assert.NotEmpty(found[0].Reason);
        Assert.NotEmpty(found[0].Mend);
    }
}
