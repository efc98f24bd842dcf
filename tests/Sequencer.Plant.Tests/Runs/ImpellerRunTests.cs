using Sequencer.Plant.Description;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A tank whose mixing an impeller tells.</summary>
public sealed class ImpellerRunTests
{
    private const string Text = """
        plant: 1
        name: Stirred tank
        ambient: 20 C
        supplies:
          water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
        reagents:
          BRINE: {dissolved: {nitrate: 2 mol/L, potassium: 2 mol/L}, temperature: 20 C, store: 50 L}
        tanks:
          TK1: {area: 2 m2, overflow: 3 m3, heel: 10 L, starts: {volume: 2 m3, water: water}, mixing: {agitator: AG1, impeller: {diameter: 500 mm, speed: 90 rpm, power_number: 1.3}, dead_time: 0 s, unmixed_lag: 60 min}}
        pumps:
          P1: {starts_in: 50 ms}
        agitators:
          AG1: {starts_in: 50 ms, speed_from: SC1}
        lines:
          brine: {from: BRINE, to: TK1, rate: 1 L/s, through: [P1]}
        transmitters:
          AT1: {measures: pH, in: TK1, low: 0 pH, high: 14 pH}
        """;

    /// <summary>By hand: T = 1.596 m, H = 1.5 m: 5.2 x 2.016 x 1.225 / (1.0914 x 1.5 x 0.25) = 31.4 s, over ln 20: 10.5 s; 1.3 x 1000 x 1.5^3 x 0.5^5 = 137 W.</summary>
    [Fact]
    public void Power_and_lag_follow_from_the_impeller()
    {
        MixingDescription mixing = RunningPlant.Model(Text).Tanks[0].Mixing;
        Assert.Equal(10.47, mixing.LagSeconds, 0.02);
        Assert.Equal(0.1371, mixing.PowerKilowatts, 1e-4);
    }

    /// <summary>A pulse is mixed in to all but 1/e after a lag, at half the speed after two.</summary>
    [Theory]
    [InlineData(1.0, 10.47)]
    [InlineData(0.5, 20.94)]
    public void A_pulse_mixes_in_with_that_lag(double speed, double lag)
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Model(Text));
        plant.Plant.SetValue(0, speed);
        plant.Command(true, "AG1");
        plant.Run(1.0);
        plant.Command(true, "P1");
        plant.Run(0.2);
        plant.Command(false, "P1");
        plant.Run(lag);
        double given = plant.Total("BRINE.used") * 2.0;
        Assert.Equal(1.0 - (1.0 / Math.E), plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume") / given, 0.01);
    }

    [Theory]
    [InlineData("dead_time: 0 s", "lag: 5 s, dead_time: 0 s", "SEQ0803")]
    [InlineData("dead_time: 0 s", "power: 1 kW, dead_time: 0 s", "SEQ0803")]
    [InlineData("agitator: AG1, ", "", "SEQ0806")]
    [InlineData("diameter: 500 mm", "diameter: 2 m", "SEQ0834")]
    [InlineData("speed: 90 rpm", "speed: 90 m", "SEQ0810")]
    [InlineData("power_number: 1.3", "power_number: 130", "SEQ0808")]
    public void A_mistake_in_an_impeller_is_told(string words, string others, string code)
    {
        Assert.Contains(words, Text, StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", Text.Replace(words, others, StringComparison.Ordinal)), diagnostics));
        Assert.Contains(code, diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }
}
