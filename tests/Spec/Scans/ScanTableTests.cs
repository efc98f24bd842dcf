namespace Sequencer.Spec.Tests.Scans;

/// <summary>The examples of <c>spec/meaning.md</c> show scan by scan what happens, and it does.</summary>
public sealed class ScanTableTests
{
    private const string Page = "spec/meaning.md";

    /// <summary>Sections that tell of no behaviour of their own.</summary>
    private static readonly string[] WithoutExample = ["The longest time"];

    private static readonly IReadOnlyList<ScanTable> All = [.. ScanTable.Of(Page)];

    public static TheoryData<string> Places => [.. All.Select(table => table.Place)];

    [Theory]
    [MemberData(nameof(Places))]
    public void A_table_shows_what_happens(string place)
    {
        ScanTable table = All.Single(each => each.Place == place);
        PlayedProgram program = new(table);
        List<string> differences = [];
        foreach (ScanRow row in table.Rows)
        {
            program.Play(row);
            for (int column = 0; column < table.Columns.Length; column++)
            {
                string shown = program.Show(table.Columns[column]);
                if (row.Shows[column].Length > 0 && shown != row.Shows[column])
                {
                    differences.Add($"scan {row.Scan}: {table.Columns[column]} is {shown}, not {row.Shows[column]}");
                }
            }
        }

        Assert.True(differences.Count == 0, $"{place}\n{string.Join('\n', differences)}");
        Assert.True(table.Rows.Length >= 3, $"{place}: too short to show anything");
    }

    [Fact]
    public void Every_section_of_the_meaning_has_an_example()
    {
        string[] sections = File.ReadAllText(Testing.RepositoryPath.At("spec", "meaning.md")).Split("\n## ").Skip(1).ToArray();
        Assert.All(
            sections.Where(section => !WithoutExample.Contains(section.Split('\n')[0])),
            section => Assert.True(section.Contains("```seq scans\n", StringComparison.Ordinal), $"no example below \"{section.Split('\n')[0]}\""));
    }
}
