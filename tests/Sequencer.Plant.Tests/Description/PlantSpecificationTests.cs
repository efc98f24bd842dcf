using Sequencer.Plant.Description;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Description;

/// <summary>Every <c>yaml plant</c> block of the specification is read; its fence says what must come out.</summary>
public sealed class PlantSpecificationTests
{
    private const string Fence = "```yaml plant ";

    public static TheoryData<string, string, string> Blocks()
    {
        TheoryData<string, string, string> blocks = [];
        string[] pages = [RepositoryPath.At("spec", "plant.md"), .. Directory.GetFiles(RepositoryPath.At("spec", "diagnostics"), "SEQ08*.md").Order(StringComparer.Ordinal)];
        foreach (string page in pages)
        {
            string[] lines = File.ReadAllLines(page);
            for (int line = 0; line < lines.Length; line++)
            {
                if (lines[line].StartsWith(Fence, StringComparison.Ordinal))
                {
                    int end = Array.IndexOf(lines, "```", line);
                    blocks.Add($"{Path.GetFileName(page)}:{line + 1}", lines[line][Fence.Length..], string.Join('\n', lines[(line + 1)..end]) + "\n");
                }
            }
        }

        return blocks;
    }

    [Theory]
    [MemberData(nameof(Blocks))]
    public void A_block_of_the_specification_is_what_its_fence_says(string place, string expectation, string text)
    {
        DiagnosticBag diagnostics = new();
        PlantModel? model = PlantReader.Read(new SourceText(place, text), diagnostics);
        string expected = expectation == "clean" ? "" : expectation["error=".Length..];
        Assert.True(
            expected == string.Join(',', diagnostics.InOrder().Select(diagnostic => diagnostic.Code)),
            $"{place} should be {expectation}:\n{DiagnosticRenderer.Render(diagnostics.InOrder())}");
        Assert.Equal(expectation == "clean", model is not null);
    }

    [Fact]
    public void Each_code_has_its_page_and_each_page_its_code()
    {
        string[] sources = ["Yaml/YamlDiagnostics.cs", "Description/PlantDiagnostics.cs", "Titration/TitrationDiagnostics.cs", "Response/TrendDiagnostics.cs"];
        string[] codes = [.. sources.SelectMany(source => File.ReadAllLines(RepositoryPath.At("src", "Sequencer.Plant", source)))
            .Select(line => line.Trim().Trim('"', ','))
            .Where(text => text.StartsWith("SEQ08", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)];
        Assert.True(codes.Length > 20, "the codes were found");
        Assert.Equal(codes.Distinct(), codes);
        Assert.Equal(codes, Directory.GetFiles(RepositoryPath.At("spec", "diagnostics"), "SEQ08*.md").Select(Path.GetFileNameWithoutExtension).Order(StringComparer.Ordinal));
    }
}
