using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>A fenced YAML block of the specification: <c>yaml KIND [WORDS] EXPECTED</c>.</summary>
internal sealed record SpecBlock(string File, int Line, string Kind, string[] Words, string Expected, string Text)
{
    private const string Fence = "```";

    /// <summary>The blocks of one kind in all pages, in order.</summary>
    public static IEnumerable<SpecBlock> All(string kind) =>
        Directory.EnumerateFiles(RepositoryPath.At("spec"), "*.md", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)
            .SelectMany(Blocks)
            .Where(block => block.Kind == kind);

    private static IEnumerable<SpecBlock> Blocks(string path)
    {
        string[] lines = System.IO.File.ReadAllLines(path);
        for (int line = 0; line < lines.Length; line++)
        {
            string[] words = lines[line].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length < 3 || words[0] != Fence + "yaml")
            {
                continue;
            }

            int end = Array.IndexOf(lines, Fence, line + 1);
            string file = Path.GetRelativePath(RepositoryPath.Root, path).Replace('\\', '/');
            yield return new SpecBlock(file, line + 1, words[1], words[2..^1], words[^1], string.Join('\n', lines[(line + 1)..end]) + "\n");
            line = end;
        }
    }
}
