using System.Text;
using Sequencer.Testing;

namespace Sequencer.Spec.Tests;

public sealed class DiagnosticPageTests
{
    private const string Accept = "ACCEPT_GOLDEN=1 dotnet test tests/Spec --filter DiagnosticPageTests";

    /// <summary>Too long for a page, or not UTF-8: their pages say so.</summary>
    private static readonly string[] NotShown = ["SEQ0101", "SEQ0102", "SEQ0108", "SEQ0112"];

    [Fact]
    public void Every_code_has_a_page_and_every_page_a_code()
    {
        List<string> codes = [.. DiagnosticCodes.Factories.SelectMany(DiagnosticCodes.Of)];

        Assert.True(codes.Count > 30, "too few codes were found");
        Assert.Empty(codes.Distinct().Except(Documents.Pages).Select(code => $"spec/diagnostics/{code}.md is missing"));
        Assert.Empty(Documents.Pages.Except(codes).Select(code => $"spec/diagnostics/{code}.md is about no code"));
    }

    [Fact]
    public void No_code_means_two_things()
    {
        List<(string Code, string Place)> codes = [.. DiagnosticCodes.Factories.SelectMany(factory => DiagnosticCodes.Of(factory).Select(code => (code, factory.Name)))];

        Assert.True(codes.Count > 30, "too few codes were found");
        Assert.Empty(codes.GroupBy(pair => pair.Code).Where(group => group.Count() > 1).Select(group => $"{group.Key}: {string.Join(", ", group.Select(pair => pair.Place))}"));
    }

    [Fact]
    public void Every_factory_method_has_one_code() => Assert.All(
        DiagnosticCodes.Factories,
        factory => Assert.True(
            DiagnosticCodes.Makers(factory).Count() == DiagnosticCodes.Of(factory).Count,
            $"{factory.Name}: {DiagnosticCodes.Makers(factory).Count()} methods, {DiagnosticCodes.Of(factory).Count} codes"));

    [Fact]
    public void Every_page_shows_its_mistake_and_a_mended_program()
    {
        Assert.True(Documents.Pages.Count > 30, "too few pages were found");
        Assert.All(Documents.Pages, code =>
        {
            Assert.StartsWith($"# {code}: ", Documents.Title(code), StringComparison.Ordinal);
            if (string.CompareOrdinal(code, "SEQ0600") >= 0 || NotShown.Contains(code))
            {
                return;
            }

            if (string.CompareOrdinal(code, "SEQ0280") >= 0 && string.CompareOrdinal(code, "SEQ0289") <= 0)
            {
                string[] files = [.. Documents.Blocks.Where(block => block.Path == $"spec/diagnostics/{code}.md").Select(block => block.Tag)];
                Assert.True(files is [var shown, var mended] && shown == $"yaml site-files one-pit {code}" && mended == "yaml site-files one-pit clean", $"{code}: {string.Join(", ", files)}");
                return;
            }

            List<string> tags = [.. Documents.Blocks.Where(block => block.Path == $"spec/diagnostics/{code}.md").Select(block => block.Tag)];
            Assert.True(tags.Exists(tag => (tag.StartsWith("seq error=", StringComparison.Ordinal) || tag.StartsWith("seq units error=", StringComparison.Ordinal)) && tag.Contains(code, StringComparison.Ordinal)), $"{code}: no block triggers it");
            Assert.True(tags.Exists(tag => tag is "seq clean" or "seq units clean"), $"{code}: no mended block");
        });
    }

    [Fact]
    public void The_index_lists_every_page()
    {
        StringBuilder index = new("# Diagnostics\n\nWhat each code means on the plant, with an example and its mend. What can be mended in one way only is marked with a\nplus: `sequencer check --mend` does it in the files. A fix never changes a number, and no comment.\n\nMade from the pages by `" + Accept + "`.\n");
        string group = "";
        foreach (string code in Documents.Pages)
        {
            if (code[..5] != group)
            {
                group = code[..5];
                index.Append(System.Globalization.CultureInfo.InvariantCulture, $"\n## {GroupTitle(group)}\n\n");
            }

            index.Append(System.Globalization.CultureInfo.InvariantCulture, $"- [{code}]({code}.md){(MendedBlocks.Codes.Contains(code) ? " +" : "")}: {Documents.Title(code)[(code.Length + 4)..]}\n");
        }

        string path = RepositoryPath.At("spec", "diagnostics", "index.md");
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1" && Environment.GetEnvironmentVariable("CI") is null)
        {
            File.WriteAllText(path, index.ToString());
        }

        Assert.True(File.Exists(path) && File.ReadAllText(path) == index.ToString(), $"spec/diagnostics/index.md is out of date; write it anew with: {Accept}");
    }

    private static string GroupTitle(string group) => group switch
    {
        "SEQ01" => "Text and parsing (01xx)",
        "SEQ02" => "Names (02xx)",
        "SEQ03" => "Types, units and ranges (03xx)",
        "SEQ04" => "Flow of steps (04xx)",
        "SEQ05" => "Protections and proof (05xx)",
        "SEQ06" => "Simulation and scenarios (06xx)",
        "SEQ07" => "Export and structured text (07xx)",
        "SEQ08" => "Plant description (08xx)",
        "SEQ09" => "Site files and recipes (09xx)",
        _ => group,
    };
}
