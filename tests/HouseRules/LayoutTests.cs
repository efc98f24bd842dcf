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

    /// <summary>A family of small types may stand together: the main type, and types that derive from it or that it is made of.</summary>
    [Fact]
    public void A_file_bears_the_name_of_its_main_type_and_holds_only_its_family()
    {
        List<(SourceFile File, List<MemberDeclarationSyntax> Types)> seen = [.. SourceFiles.All.Select(file => (file, TopTypes(file).ToList()))];

        Assert.True(seen.Sum(pair => pair.Types.Count) > 150, "too few types were seen");
        string strangers = string.Join('\n', seen.Where(pair => pair.Types.Count > 0 && !IsFamily(pair.File, pair.Types))
            .Select(pair => $"{pair.File.Path}: {string.Join(", ", pair.Types.Select(NameOf))}"));
        Assert.True(strangers.Length == 0, strangers);
    }

    [Fact]
    public void No_type_has_an_empty_word_for_a_name()
    {
        List<string> names = [.. SourceFiles.All.SelectMany(file => file.Root.DescendantNodes().OfType<BaseTypeDeclarationSyntax>()).Select(type => type.Identifier.Text)];

        Assert.True(names.Count > 150, "too few types were seen");
        Assert.DoesNotContain(names, name => EmptyWords.Any(word => name.Contains(word, StringComparison.Ordinal)));
    }

    private static IEnumerable<MemberDeclarationSyntax> TopTypes(SourceFile file) => file.Root.DescendantNodes(node => node is not BaseTypeDeclarationSyntax)
        .OfType<MemberDeclarationSyntax>().Where(node => node is BaseTypeDeclarationSyntax or DelegateDeclarationSyntax);

    private static string NameOf(MemberDeclarationSyntax type) =>
        type is BaseTypeDeclarationSyntax named ? named.Identifier.Text : ((DelegateDeclarationSyntax)type).Identifier.Text;

    private static bool IsFamily(SourceFile file, List<MemberDeclarationSyntax> types)
    {
        string main = file.Name.Split('.')[0];
        HashSet<string> family = [main];
        bool grew = true;
        while (grew)
        {
            grew = types.Where(type => !family.Contains(NameOf(type)) && (Bases(type).Any(family.Contains) || types.Exists(other => family.Contains(NameOf(other)) && Mentions(other, NameOf(type)))))
                .Select(NameOf).ToList().Exists(family.Add);
        }

        return types.Exists(type => NameOf(type) == main) && types.TrueForAll(type => family.Contains(NameOf(type)));
    }

    private static IEnumerable<string> Bases(MemberDeclarationSyntax type) =>
        type is BaseTypeDeclarationSyntax { BaseList: { } bases } ? bases.Types.Select(based => based.Type.ToString()) : [];

    private static bool Mentions(MemberDeclarationSyntax type, string name) =>
        type.DescendantTokens().Any(token => token.Text == name);
}
