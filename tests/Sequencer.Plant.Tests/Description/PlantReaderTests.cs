using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.Runs;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Description;

public sealed class PlantReaderTests
{
    private static string Site(string site) => File.ReadAllText(RepositoryPath.Site(site, "plant.yaml"));

    [Fact]
    public void All_mistakes_of_a_plant_are_found_in_one_pass()
    {
        string text = Site("one-pit")
            .Replace("lab_drains, to: TK301, rate: 20 L/min", "lab_drain, to: TK301, rate: 20", StringComparison.Ordinal)
            .Replace("overflow: 0.80 m3", "overflow: 0.80 kg", StringComparison.Ordinal)
            .Replace("P303: {starts_in: 0.5 s", "P304: {starts_in: 0.5 s", StringComparison.Ordinal)
            .Replace("acetate: 5.0", "aecetate: 5.0", StringComparison.Ordinal)
            .Replace("travel: 6 s", "travel: -6 s", StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", text), diagnostics));
        Assert.Equal(
            ["SEQ0835", "SEQ0810", "SEQ0804", "SEQ0808", "SEQ0831", "SEQ0809", "SEQ0831"],
            diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }

    [Fact]
    public void A_plant_is_kept_in_base_units_and_written_order()
    {
        PlantModel plant = RunningPlant.Site("marlpit-wharf");
        Assert.Equal(12_000.0 / 3600.0, plant.Lines[0].RateLitresPerSecond, 1e-12);
        Assert.Equal(13_500.0, plant.Tanks[0].OverflowLitres);
        Assert.Equal(["P200", "P202", "P203", "P205", "P207"], plant.Drives.Select(drive => drive.Tag).Take(5));
        Assert.Equal(["AG201", "AG203"], plant.Drives.Where(drive => drive.Kind == DriveKind.Agitator).Select(drive => drive.Tag).Take(2));
        Assert.Equal(["XV200", "XV206", "XV207"], plant.Drives.Where(drive => drive.Kind == DriveKind.Valve).Select(drive => drive.Tag).Take(3));
        IPlant run = PlantRun.Start(plant, 1);
        Assert.Equal(new TransmitterPort("LT201", 0.0, 14.0, "m3"), run.Transmitters[0]);
        Assert.Contains("ES201", run.Contacts);
    }

    [Theory]
    [InlineData("one-pit")]
    [InlineData("marlpit-wharf")]
    [InlineData("quillgate")]
    public void A_file_cut_off_anywhere_is_read_or_reported(string site)
    {
        string text = Site(site);
        for (int length = 0; length < text.Length; length += 97)
        {
            DiagnosticBag diagnostics = new();
            PlantModel? plant = PlantReader.Read(new SourceText("plant.yaml", text[..length]), diagnostics);
            Assert.Equal(plant is null, diagnostics.HasErrors);
        }
    }
}
