using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.OutsideChecks;
using Sequencer.Text;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>The vacuum pump of a drum with its seal water, cooler and cooling water.</summary>
public sealed class SealWaterTests
{
    private const string Heat = "18.082 kW";

    internal static readonly string Text = DrumTests.Text
        .Replace("vacuum: {pump: VP1,", $$"""vacuum: {pump: VP1, seal_water: {name: SW1, holds: 80 L, heat: {{Heat}}, flow: 30 L/min, cooler: {conductance: 1500 W/K, flow: 36 L/min, water: tower, through: [XV1]} },""", StringComparison.Ordinal)
        .Replace("supplies:\n", "supplies:\n  tower: {temperature: 15 C, pH: 7.5, balanced_by: chloride, dissolved: {carbonate: 2 mmol/L, sodium: 3 mmol/L}}\n", StringComparison.Ordinal)
        .Replace("lines:\n", "valves:\n  XV1: {travel: 1 s}\nlines:\n", StringComparison.Ordinal)
        .Replace("transmitters:\n", "transmitters:\n  TT1: {measures: temperature, in: SW1, low: 0 C, high: 100 C}\n  FT2: {measures: flow, in: SW1, low: 0 L/min, high: 50 L/min}\n", StringComparison.Ordinal);

    /// <summary>Seal water of 0.5 kg/s, cooled by 0.6 kg/s of 15 C with 1500 W/K, gives up 18.1 kW at 35 C: with that heat from the pump the run comes to rest there. Computed with 4180 J/(kg K).</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void Seal_water_comes_to_rest_where_its_cooler_takes_the_heat_of_the_pump()
    {
        RunningPlant plant = Turning();
        Wait(plant, 2.0 * 3600.0);
        Within(35.0, plant.Quantity("SW1.temperature"), 0.05);
        Within(18.1, plant.Quantity("SW1.cooling"), 0.054);
        Assert.Equal(35.0, plant.Reading("TT1"), 0.05);
        Assert.Equal(30.0, plant.Reading("FT2"), 1e-6);
    }

    /// <summary>Bare cloth has 20 of 60 kPa with water of 15 C; at 35 C steam tables have 5.629 - 1.706 kPa more in the way.</summary>
    [Fact]
    public void Warm_seal_water_weakens_the_vacuum()
    {
        RunningPlant plant = Turning();
        Wait(plant, 2.0 * 3600.0);
        Assert.Equal(-20.0 * (1.0 - ((5.629 - 1.706) / 60.0)), plant.Quantity("F1.vacuum"), 0.01);
    }

    /// <summary>18.082 kW in 80 kg of 4180 J/(kg K) are 0.0541 K/s.</summary>
    [Fact]
    public void Without_cooling_water_it_warms_as_the_heat_says_and_the_vacuum_goes()
    {
        RunningPlant plant = Turning();
        Wait(plant, 2.0 * 3600.0);
        double before = plant.Quantity("SW1.temperature");
        plant.Inject("SW1.uncooled");
        Wait(plant, 600.0);
        Assert.Equal(before + (18.082e3 / (80.0 * 4180.0) * 600.0), plant.Quantity("SW1.temperature"), 0.05);
        Assert.InRange(plant.Quantity("F1.vacuum"), -14.0, -8.0);
        plant.Clear("SW1.uncooled");
        Wait(plant, 3600.0);
        Assert.Equal(before, plant.Quantity("SW1.temperature"), 0.1);
        plant.Command(false, "XV1");
        Wait(plant, 300.0);
        Assert.True(plant.Quantity("SW1.temperature") > before + 10.0);
        plant.Command(false, "VP1");
        Wait(plant, 60.0);
        double after = plant.Quantity("SW1.temperature");
        Wait(plant, 600.0);
        Assert.Equal(after, plant.Quantity("SW1.temperature"), 1e-6);
    }

    /// <summary>Of 1500 W/K a fouled cooler has 375: with 0.5 kg/s against 0.6 the same heat takes 71 C by hand (N = 0.179, C = 0.833, e = 0.154 of 2090 W/K).</summary>
    [Fact]
    public void A_fouled_cooler_lets_it_warm()
    {
        RunningPlant plant = Turning();
        plant.Inject("SW1.fouled");
        Wait(plant, 6.0 * 3600.0);
        double decay = Math.Exp(-375.0 / 2090.0 * (1.0 - (0.5 / 0.6)));
        double effectiveness = (1.0 - decay) / (1.0 - (0.5 / 0.6 * decay));
        Assert.Equal(15.0 + (18.082e3 / (effectiveness * 2090.0)), plant.Quantity("SW1.temperature"), 0.1);
    }

    [Fact]
    public void A_pump_that_loses_its_seal_water_pulls_nothing()
    {
        RunningPlant plant = Turning();
        Wait(plant, 600.0);
        plant.Inject("SW1.lost");
        Wait(plant, 60.0);
        Assert.Equal(0.0, plant.Quantity("F1.vacuum"), 0.01);
        Assert.Equal(0.0, plant.Reading("FT2"), 1e-6);
        plant.Clear("SW1.lost");
        Wait(plant, 60.0);
        Assert.InRange(plant.Quantity("F1.vacuum"), -21.0, -18.0);
    }

    [Theory]
    [InlineData("conductance: 1500 W/K", "conductance: 1500 W", "SEQ0810")]
    [InlineData("water: tower", "water: well", "SEQ0831")]
    [InlineData("name: SW1", "name: VP1", "SEQ0830")]
    [InlineData("holds: 80 L, heat", "heat", "SEQ0806")]
    [InlineData("measures: flow, in: SW1, low: 0 L/min, high: 50 L/min", "measures: volume, in: SW1, low: 0 L, high: 50 L", "SEQ0837")]
    public void A_mistake_in_seal_water_is_told(string words, string others, string code)
    {
        Assert.Contains(words, Text, StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", Text.Replace(words, others, StringComparison.Ordinal)), diagnostics));
        Assert.Contains(code, diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }

    private static RunningPlant Turning()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Model(Text));
        plant.Command(true, "M1", "VP1", "XV1");
        return plant;
    }

    private static void Wait(RunningPlant plant, double seconds)
    {
        for (double passed = 0.0; passed < seconds; passed += 10.0)
        {
            plant.Plant.Advance(10.0);
        }

        Assert.Null(plant.Plant.Failure);
    }
}
