using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Sequencer.Testing;

namespace Sequencer.HouseRules.Tests;

/// <summary>The C# files of <c>src</c> and <c>tests</c> as they lie there, without what a build made.</summary>
internal static class SourceFiles
{
    private static readonly Lazy<List<SourceFile>> Parsed = new(() => [.. Read("src"), .. Read("tests")]);

    public static IReadOnlyList<SourceFile> All => Parsed.Value;

    public static IEnumerable<SourceFile> Production => All.Where(file => file.Path.StartsWith("src/", StringComparison.Ordinal));

    /// <summary>Everything but the hosts, which alone may touch the console and the machine.</summary>
    public static IEnumerable<SourceFile> Libraries => Production.Where(file => !file.Path.StartsWith("src/Sequencer.Cli/", StringComparison.Ordinal));

    /// <summary>Paths below <paramref name="folder"/> from the repository's root with forward slashes, in order.</summary>
    public static List<string> Paths(string folder, params string[] extensions) =>
    [
        .. Directory.EnumerateFiles(RepositoryPath.At(folder), "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(RepositoryPath.Root, path).Replace('\\', '/'))
            .Where(path => !path.Split('/').Any(part => part is "bin" or "obj" or "TestResults"))
            .Where(path => extensions.Length == 0 || extensions.Contains(Path.GetExtension(path)))
            .Order(StringComparer.Ordinal),
    ];

    private static IEnumerable<SourceFile> Read(string folder) => Paths(folder, ".cs").Select(path =>
    {
        string text = File.ReadAllText(RepositoryPath.At(path));
        return new SourceFile(path, text, CSharpSyntaxTree.ParseText(text, new CSharpParseOptions(LanguageVersion.Latest)).GetRoot());
    });
}
