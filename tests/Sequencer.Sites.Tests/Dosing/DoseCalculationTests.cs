using Sequencer.Sites.Dosing;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Dosing;

public sealed class DoseCalculationTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory();

    public void Dispose() => _folder.Delete(true);

    [Fact]
    public void A_person_reads_what_to_dose_and_how_sure_that_is()
    {
        SiteResult result = DoseCalculation.Run(Example(), Output);
        Assert.Equal(Outcome.Holds, result.Outcome);
        Assert.Equal(["dose.json", "dose.txt", "titration.png", "titration.svg"], result.Files.Order(StringComparer.Ordinal));
        GoldenFile.Matches(result.Text, "dose.verified.txt");
        GoldenFile.Matches(File.ReadAllText(Path.Combine(Output, "titration.svg")), "titration.verified.svg");
    }

    [Fact]
    public void Of_a_table_with_mistakes_nothing_is_written()
    {
        string table = Path.Combine(_folder.FullName, "table.csv");
        File.WriteAllText(table, "sample, 500\n");
        Assert.Equal(Outcome.Fails, DoseCalculation.Run(table, Output).Outcome);
        Assert.False(Directory.Exists(Output));
    }

    [Fact]
    public void A_table_that_is_not_there_is_told_about() =>
        Assert.Equal(Outcome.NotDone, DoseCalculation.Run(Path.Combine(_folder.FullName, "none.csv"), null).Outcome);

    private string Output => Path.Combine(_folder.FullName, "out");

    /// <summary>The table of the specification.</summary>
    private string Example()
    {
        string page = File.ReadAllText(RepositoryPath.At("spec", "dosing.md"));
        string block = page.Split("```csv dose clean\n")[1].Split("```")[0];
        string path = Path.Combine(_folder.FullName, "rinse.csv");
        File.WriteAllText(path, block);
        return path;
    }
}
