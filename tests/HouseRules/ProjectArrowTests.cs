using System.Xml.Linq;
using Sequencer.Testing;

namespace Sequencer.HouseRules.Tests;

/// <summary>Which project may see which, and which package is named where. DEVELOPERS.md says why.</summary>
public sealed class ProjectArrowTests
{
    private static readonly Dictionary<string, string> Arrows = new()
    {
        ["Text"] = "",
        ["Language"] = "Text",
        ["Control"] = "Text",
        ["Lowering"] = "Text Language Control",
        ["Proof"] = "Text Control",
        ["StructuredText"] = "Text Control",
        ["Export"] = "Text Language Control StructuredText Proof",
        ["Plant"] = "Text",
        ["Simulation"] = "Text Control Plant",
        ["Sites"] = "Text Language Control Lowering Proof StructuredText Export Plant Simulation",
        ["Cli"] = "Text Sites",
    };

    private static readonly Dictionary<string, string> Packages = new()
    {
        ["Sprache"] = "Language",
        ["YamlDotNet"] = "Plant Sites",
        ["MiniExcel"] = "Export",
        ["Parquet.Net"] = "Sites",
        ["SkiaSharp"] = "Simulation",
        ["SkiaSharp.NativeAssets.Linux.NoDependencies"] = "Simulation",
        ["System.CommandLine"] = "Cli",
    };

    private static readonly string[] HiddenPackages = ["Sprache", "YamlDotNet", "SkiaSharp", "MiniExcel", "Parquet.Net"];

    [Fact]
    public void Every_project_references_what_it_may_and_no_more()
    {
        List<(string Name, XElement File)> projects = Projects();

        Assert.Equal(Arrows.Keys.Order(StringComparer.Ordinal), projects.Select(project => project.Name).Order(StringComparer.Ordinal));
        foreach ((string name, XElement file) in projects)
        {
            IEnumerable<string> references = file.Descendants("ProjectReference")
                .Select(reference => ShortName(reference.Attribute("Include")?.Value ?? ""));
            Assert.Equal($"{name}: {Sorted(Arrows[name].Split(' '))}", $"{name}: {Sorted(references)}");
        }
    }

    [Fact]
    public void Packages_are_named_only_where_they_belong()
    {
        List<(string Project, string Package, XElement Reference)> uses =
        [
            .. Projects().SelectMany(project => project.File.Descendants("PackageReference")
                .Select(reference => (project.Name, reference.Attribute("Include")?.Value ?? "", reference))),
        ];

        Assert.True(uses.Count > 4, "too few package references were seen");
        Assert.Empty(uses.Where(use => !Packages.TryGetValue(use.Package, out string? homes) || !homes.Split(' ').Contains(use.Project))
            .Select(use => $"{use.Project}: {use.Package}"));
        Assert.Empty(uses.Where(use => HiddenPackages.Contains(use.Package) && use.Reference.Attribute("PrivateAssets")?.Value != "compile")
            .Select(use => $"{use.Project}: {use.Package} can be seen from other projects"));
    }

    [Fact]
    public void A_project_sees_only_what_its_own_file_names()
    {
        XElement shared = XElement.Load(RepositoryPath.At("src", "Directory.Build.props"));

        XElement byDefault = shared.Elements("ItemDefinitionGroup").Elements("ProjectReference").Elements("PrivateAssets").Single();
        Assert.Contains("compile", byDefault.Value.Split(';'));
        Assert.Empty(Projects()
            .Where(project => project.File.Descendants("ProjectReference").Any(reference => reference.Attribute("PrivateAssets") is not null || reference.Elements("PrivateAssets").Any()))
            .Select(project => project.Name));
    }

    private static List<(string Name, XElement File)> Projects() =>
        [.. SourceFiles.Paths("src", ".csproj").Select(path => (ShortName(path), XElement.Load(RepositoryPath.At(path))))];

    private static string ShortName(string path) => Path.GetFileNameWithoutExtension(path).Replace("Sequencer.", "", StringComparison.Ordinal);

    private static string Sorted(IEnumerable<string> names) => string.Join(' ', names.Where(name => name.Length > 0).Order(StringComparer.Ordinal));
}
