using Sequencer.Plant.Description;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Conductivity as an instrument of a plant sees it.</summary>
public sealed class ConductivityTests
{
    private const string Cells = """
        QT1: {measures: conductivity, in: TK1, low: 0 mS/cm, high: 20 mS/cm, covered_from: 50 L}
          QT2: {measures: conductivity, in: TK2, low: 0 uS/cm, high: 5000 uS/cm}
        """;

    /// <summary>
    /// 10 mmol/L of sodium and chloride and then potassium nitrate for half of a batch: S cm2 of each at 20 C worked out by hand from Onsager's equation, within 2 %.
    /// </summary>
    [Fact]
    public void A_reagent_makes_water_conduct_more_and_warm_water_conducts_better()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: Cells));
        plant.Run(1.0);
        // The cell in TK1 hangs dry at 2 L.
        Assert.Equal(0.0, plant.Reading("QT1"), 1e-9);
        double cold = plant.Quantity("TK1.conductivity");
        double warm = plant.Quantity("TK2.conductivity");
        Assert.Equal(warm * 1000.0, plant.Reading("QT2"), 1.0);
        // 2 % a degree is common practice, of the value at 25 C: 1.70 at 60 C over 0.90 at 20 C.
        Assert.InRange(warm / cold, 1.7, 2.1);
        plant.Command(true, "AG1", "P1");
        plant.Run(90.0);
        plant.Command(false, "P1");
        plant.Command(true, "P2");
        plant.Run(60.0);
        plant.Command(false, "P2");
        plant.Run(120.0);
        double litres = plant.Quantity("TK1.volume") * 1000.0;
        double potassium = plant.Quantity("TK1.potassium");
        Assert.Equal(2000.0 / litres, potassium, 0.05);
        // KNO3 of some 10 mmol/L beside as much NaCl: 144.9 - 94 x 0.124 and 126.4 - 90 x 0.124 S cm2 at 25 C, 0.905 of it at 20 C.
        double expected = 0.905e-3 * ((potassium * 133.3) + (plant.Quantity("TK1.sodium") * 115.3));
        Assert.Equal(expected, plant.Quantity("TK1.conductivity"), 0.02 * expected);
        Assert.Equal(plant.Quantity("TK1.conductivity"), plant.Reading("QT1"), 0.02);
    }

    /// <summary>What looks at the water must not change it: the same plant without the cells has the same pH to the last digit.</summary>
    [Fact]
    public void A_cell_changes_nothing_of_the_plant()
    {
        double[] values = [.. new[] { "", Cells }.Select(instruments =>
        {
            RunningPlant plant = RunningPlant.Start(PlainTank.Model(instruments: instruments));
            plant.Command(true, "AG1", "P1", "P3");
            plant.Run(300.0);
            return plant.Quantity("TK1.pH");
        })];
        Assert.Equal(values[0], values[1]);
    }

    [Fact]
    public void A_plant_without_a_cell_has_no_such_quantity() =>
        Assert.DoesNotContain("TK1.conductivity", RunningPlant.Start(PlainTank.Model()).Plant.Quantities.Select(quantity => quantity.Name));

    [Theory]
    [InlineData("measures: conductivity, in: TK2, low: 0 mS/cm, high: 2000 mg/L", "SEQ0810 2000 mg/L: write one of: mS/cm, uS/cm")]
    [InlineData("measures: conductivity, in: TK2, low: 0 mS/m, high: 2000 mS/cm", "SEQ0809 0 mS/m: write one of: mS/cm, uS/cm")]
    [InlineData("measures: conductivty, in: TK2, low: 0 mS/cm, high: 20 mS/cm", "SEQ0811 conductivty: did you mean `conductivity`?")]
    [InlineData("measures: pH, in: TK2, low: 0 mS/cm, high: 14 pH", "SEQ0810 0 mS/cm: write one of: pH")]
    public void A_mistake_is_told_once_and_with_the_units_that_fit(string transmitter, string expected)
    {
        string text = $$$"""
            plant: 1
            name: Cell
            ambient: 20 C
            supplies:
              water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
            tanks:
              TK2: {area: 1 m2, overflow: 3 m3, heel: 100 L, starts: {volume: 200 L, water: water}, mixing: {dead_time: 1 s, lag: 5 s}}
            transmitters:
              QT1: {{{{transmitter}}}}
            """;
        DiagnosticBag diagnostics = new();
        PlantReader.Read(new SourceText("plant.yaml", text), diagnostics);
        Assert.Equal(expected, string.Join('\n', diagnostics.InOrder().Select(diagnostic => $"{diagnostic.Code} {diagnostic.Span.Text}: {diagnostic.Mend}")));
    }
}
