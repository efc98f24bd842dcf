using Sequencer.Testing;

namespace Sequencer.Spec.Tests;

/// <summary>The documents whose examples are run: all of <c>spec</c>, README.md and DEVELOPERS.md.</summary>
internal static class Documents
{
    public static IReadOnlyList<FencedBlock> Blocks { get; } = [.. Paths().SelectMany(Read)];

    public static IReadOnlyList<string> Pages { get; } =
        [.. Directory.GetFiles(RepositoryPath.At("spec", "diagnostics"), "SEQ*.md").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    public static string Title(string code) => File.ReadLines(RepositoryPath.At("spec", "diagnostics", code + ".md")).First();

    private static IEnumerable<string> Paths() => Directory.EnumerateFiles(RepositoryPath.At("spec"), "*.md", SearchOption.AllDirectories)
        .Concat(new[] { "README.md", "DEVELOPERS.md" }.Select(name => RepositoryPath.At(name)).Where(File.Exists))
        .Order(StringComparer.Ordinal);

    private static IEnumerable<FencedBlock> Read(string path)
    {
        string shown = Path.GetRelativePath(RepositoryPath.Root, path).Replace('\\', '/');
        string[] lines = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal).Split('\n');
        for (int line = 0; line < lines.Length; line++)
        {
            if (!lines[line].StartsWith("```", StringComparison.Ordinal))
            {
                continue;
            }

            int end = Array.FindIndex(lines, line + 1, text => text.TrimEnd() == "```");
            Assert.True(end > line, $"{shown}:{line + 1}: the block is not closed");
            yield return new FencedBlock(shown, line + 1, lines[line][3..].Trim(), string.Join('\n', lines[(line + 1)..end]) + "\n");
            line = end;
        }
    }
}
