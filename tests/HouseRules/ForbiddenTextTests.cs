using Sequencer.Testing;

namespace Sequencer.HouseRules.Tests;

public sealed class ForbiddenTextTests
{
    private static readonly string[] TextFiles = [".cs", ".md", ".yaml", ".yml", ".seq", ".csproj", ".props", ".targets", ".json", ".csv", ".txt", ".st", ".sh"];

    /// <summary>Written in pieces, so that this file does not hold them.</summary>
    private static readonly string[] MachinePaths = ["/" + "work/", "/" + "home/", "/" + "tmp/", "C:" + "\\", "/" + "Users/"];

    private static readonly string[] SeedDocuments = ["facts" + ".md", "demo-" + "sites", "job-" + "map", "/" + "shared/", "packages" + ".md", "style" + ".md"];

    [Fact]
    public void No_file_names_a_path_of_one_machine() => Refuse(MachinePaths);

    [Fact]
    public void No_file_cites_a_document_that_is_not_here() => Refuse(SeedDocuments);

    [Fact]
    public void No_test_is_skipped()
    {
        List<SourceFile> tests = [.. SourceFiles.All.Where(file => file.Path.StartsWith("tests/", StringComparison.Ordinal))];

        Assert.True(tests.Count > 20, "too few test files were seen");
        Assert.Empty(tests.Where(file => file.Text.Contains("Skip" + " =", StringComparison.Ordinal) || file.Text.Contains("Skip" + "=", StringComparison.Ordinal)).Select(file => file.Path));
    }

    private static void Refuse(string[] words)
    {
        List<string> paths = [.. new[] { "src", "tests", "spec", "sequences" }.SelectMany(folder => SourceFiles.Paths(folder, TextFiles))];
        paths.AddRange(Directory.EnumerateFiles(RepositoryPath.Root, "*.md").Select(path => Path.GetFileName(path)));

        Assert.True(paths.Count > 200, "too few files were seen");
        Assert.Empty(paths.SelectMany(path => words.Where(word => File.ReadAllText(RepositoryPath.At(path)).Contains(word, StringComparison.Ordinal)).Select(word => $"{path}: {word}")));
    }
}
