using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Sequencer.Testing;

namespace Sequencer.HouseRules.Tests;

public sealed class LayoutTests
{
    private const int LongestFile = 400;
    private static readonly string[] TopLevel = ["README.md", "DEVELOPERS.md", "Sequencer.sln", "sequences", "spec", "src", "tests"];
    private static readonly string[] EmptyWords = ["Manager", "Helper", "Utils", "Misc"];

    [Fact]
    public void The_top_level_holds_what_it_should_and_nothing_else()
    {
        HashSet<string> ignored = [.. File.ReadLines(RepositoryPath.At(".gitignore")).Select(line => line.TrimEnd('/'))];
        List<string> entries = [.. Directory.EnumerateFileSystemEntries(RepositoryPath.Root).Select(path => Path.GetFileName(path))];

        Assert.True(entries.Count > 5, "the repository's root was not found");
        Assert.Empty(entries.Where(entry => entry[0] != '.' && !ignored.Contains(entry)).Except(TopLevel));
    }

    [Fact]
    public void No_file_is_longer_than_400_lines()
    {
        Assert.True(SourceFiles.All.Count > 150, "too few files were seen");
        Assert.Empty(SourceFiles.All.Where(file => file.LineCount > LongestFile).Select(file => $"{file.Path}: {file.LineCount} lines"));
    }

    [Fact]
    public void A_file_holds_one_type_at_its_top_and_bears_its_name()
    {
        List<(SourceFile File, List<string> Types)> seen = [.. SourceFiles.All.Select(file => (file, TopTypes(file).ToList()))];

        Assert.True(seen.Sum(pair => pair.Types.Count) > 150, "too few types were seen");
        Assert.Empty(seen.Where(pair => pair.Types.Count > 1 || (pair.Types.Count == 1 && pair.Types[0] != pair.File.Name.Split('.')[0]))
            .Select(pair => $"{pair.File.Path}: {string.Join(", ", pair.Types)}"));
    }

    [Fact]
    public void No_type_has_an_empty_word_for_a_name()
    {
        List<string> names = [.. SourceFiles.All.SelectMany(file => file.Root.DescendantNodes().OfType<BaseTypeDeclarationSyntax>()).Select(type => type.Identifier.Text)];

        Assert.True(names.Count > 150, "too few types were seen");
        Assert.DoesNotContain(names, name => EmptyWords.Any(word => name.Contains(word, StringComparison.Ordinal)));
    }

    private static IEnumerable<string> TopTypes(SourceFile file) => file.Root.DescendantNodes(node => node is not BaseTypeDeclarationSyntax)
        .Where(node => node is BaseTypeDeclarationSyntax or DelegateDeclarationSyntax)
        .Select(node => node is BaseTypeDeclarationSyntax type ? type.Identifier.Text : ((DelegateDeclarationSyntax)node).Identifier.Text);
}
