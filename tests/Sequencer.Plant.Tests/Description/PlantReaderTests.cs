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

    [Theory]
    [InlineData("SEQ0832", "running: YS303", "running: YS-303", "YS-303")]
    [InlineData("SEQ0833", "plant: 1", "plant: 2", "2")]
    [InlineData("SEQ0836", "pH: 2.0", "pH: 12.0", "lab_drains")]
    public void A_mistake_has_its_place(string code, string words, string others, string marked)
    {
        string text = Site("one-pit");
        Assert.Contains(words, text, StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", text.Replace(words, others, StringComparison.Ordinal)), diagnostics));
        Assert.Equal((code, marked), Assert.Single(diagnostics.InOrder().Select(diagnostic => (diagnostic.Code, diagnostic.Span.Text.ToString()))));
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
    [InlineData("trough: TROUGH", "trough: TROUCH", "SEQ0831")]
    [InlineData("    turned_by: M221", "    turned_by: XV208", "SEQ0831")]
    [InlineData("submerged: 35 %", "submerged: 350 %", "SEQ0808")]
    [InlineData("bare_cloth: -25 kPa", "bare_cloth: -70 kPa", "SEQ0834")]
    [InlineData("bare_cloth: -25 kPa", "bare_cloth: 25 kPa", "SEQ0808")]
    [InlineData("permeability: 1.5 darcy", "permeability: 1.5 m2", "SEQ0808")]
    [InlineData("holds: {iron:", "holds: {irn:", "SEQ0835")]
    [InlineData("resistance: 5e9 1/m,", "resistance: 5e9 m/kg,", "SEQ0810")]
    [InlineData("closes_at: 2 mm", "closes: 2 mm", "SEQ0806")]
    [InlineData("    area: 4.909 m2", "    levels: [{at: 1 m, holds: 1 m3}, {at: 0.5 m, holds: 2 m3}]\n    area: 4.909 m2", "SEQ0834")]
    [InlineData("    area: 4.909 m2", "    levels: [{at: 1 m}]\n    area: 4.909 m2", "SEQ0806")]
    [InlineData("    area: 4.909 m2", "    settling: {floc_density: 15 g/L, grain_density: 3 kg/L, floc_size: 1 mm, bed_density: 20 g/L}\n    area: 4.909 m2", "SEQ0806")]
    [InlineData("lag: 5 s, unmixed_lag: 10 min}", "lag: 5 s, unmixed_lag: 10 min, power: 1 kW}\n    settling: {floc_density: 25 g/L, grain_density: 3 kg/L, floc_size: 1 mm, bed_density: 20 g/L}", "SEQ0834")]
    [InlineData("to: lime_tank, rate: 2.4 m3/h", "to: lime_tank, pumped: {shut_off: 10 m, rated: 16 m3/h, head: 12 m, bore: 50 mm, length: 10 m}", "SEQ0834")]
    [InlineData("to: lime_tank, rate: 2.4 m3/h", "to: lime_tank, pumped: {shut_off: 16 m, rated: 16 m3/h, head: 12 m, length: 10 m}", "SEQ0806")]
    [InlineData("to: lime_tank, rate: 2.4 m3/h", "to: lime_tank, rate: 2.4 m3/h, pumped: {shut_off: 16 m, rated: 16 m3/h, head: 12 m, bore: 50 mm, length: 10 m}", "SEQ0838")]
    [InlineData("to: lime_tank, rate: 2.4 m3/h", "to: lime_tank, rate: 2.4 m3/h, keeps_highest: [arsenic]", "SEQ0831")]
    [InlineData("to: TK204, rate: 2 m3/h", "to: TK204, rate: 2 m3/h, keeps_highest: [flow, calcium]", "SEQ0803")]
    [InlineData("to: lime_tank, rate: 2.4 m3/h", "to: lime_tank, rate: 2.4 m3/h, draws_at: 1 m, draws_below: 1 m", "SEQ0803")]
    [InlineData("to: TK204, rate: 2 m3/h", "to: TK204, rate: 2 m3/h, draws_at: 1 m", "SEQ0803")]
    [InlineData("closes_at: 2 mm", "closes_at: 2 mm, grain_density: 300 g/L", "SEQ0834")]
    [InlineData("compressibility: 0.6,", "compressibility: 0.6, grain_density: 2 m,", "SEQ0810")]
    [InlineData("in: F220, low", "in: F220, at_full_speed: -60 kPa, low", "SEQ0805")]
    [InlineData("in: F220, low", "in: VP220, low", "SEQ0806")]
    [InlineData("in: V230, per_suspended", "in: seal_water, per_suspended", "SEQ0805")]
    [InlineData("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: redox, in: TK240, above: 100 mV", "SEQ0840")]
    [InlineData("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: turbidity, in: spray, above: 20 NTU, per_suspended: 5 NTU per g/L", "SEQ0840")]
    [InlineData("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: turbidity, in: TK240, above: 20 NTU", "SEQ0806")]
    [InlineData("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: pressure, in: P240, above: 1 bar", "SEQ0806")]
    [InlineData("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: pressure, in: F220, at_full_speed: -60 kPa, above: -40 kPa", "SEQ0805")]
    public void A_mistake_in_a_drum_or_its_instruments_is_told(string words, string others, string code)
    {
        string text = Site("marlpit-wharf");
        Assert.Contains(words, text, StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", text.Replace(words, others, StringComparison.Ordinal)), diagnostics));
        Assert.Contains(code, diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }

    [Theory]
    [InlineData("swapped_with: AT1", "", "")]
    [InlineData("swapped_with: AT9", "", "SEQ0831 AT9")]
    [InlineData("swapped_with: TK2", "", "SEQ0831 TK2")]
    [InlineData("swapped_with: TT1", "", "SEQ0839 TT1")]
    [InlineData("swapped_with: AT1", "swapped_with: TT1", "SEQ0839 TT1")]
    [InlineData("swapped_with: AT1", "swapped_with: AT1", "SEQ0839 AT1")]
    public void A_pair_of_transmitters_is_told_where_it_is_no_pair(string one, string other, string expected)
    {
        string text = $$$"""
            plant: 1
            name: Pair
            ambient: 20 C
            supplies:
              water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
            tanks:
              TK2: {area: 1 m2, overflow: 3 m3, heel: 100 L, starts: {volume: 200 L, water: water}, mixing: {dead_time: 1 s, lag: 5 s}}
            transmitters:
              AT1: {measures: pH, in: TK2, low: 0 pH, high: 14 pH}
              TT1: {measures: temperature, in: TK2, low: 0 C, high: 60 C, {{{one}}}}
              TT2: {measures: temperature, in: TK2, low: 0 C, high: 60 C, {{{other}}}}
            """;
        DiagnosticBag diagnostics = new();
        PlantReader.Read(new SourceText("plant.yaml", text.Replace(", }", "}", StringComparison.Ordinal)), diagnostics);
        Assert.Equal(expected, string.Join(", ", diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Code} {diagnostic.Span.Text}")));
    }

    [Fact]
    public void A_switch_that_would_never_turn_is_told_at_its_place()
    {
        string text = Site("marlpit-wharf").Replace("LSHH240: {measures: volume, in: TK240, above: 13.8 m3, hysteresis: 0.2 m3", "LSHH240: {measures: redox, in: TROUGH, above: 100 mV", StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", text), diagnostics));
        Assert.Equal(["SEQ0840 TROUGH"], diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Code} {diagnostic.Span.Text}"));
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
