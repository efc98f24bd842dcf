using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

/// <summary>Programs that several tests start from.</summary>
internal static class SamplePrograms
{
    /// <summary>The whole program of spec/language.md.</summary>
    public static string Rinse { get; } = ReadFromSpec();

    public static SourceText Source(string content) => new("program.seq", content);

    private static string ReadFromSpec()
    {
        const string fence = "```seq clean\n";
        string text = File.ReadAllText(RepositoryPath.At("spec", "language.md")).Replace("\r\n", "\n", StringComparison.Ordinal);
        int start = text.IndexOf(fence, StringComparison.Ordinal) + fence.Length;
        return text[start..text.IndexOf("```", start, StringComparison.Ordinal)];
    }
}
