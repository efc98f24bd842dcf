using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.OutsideChecks;
using Sequencer.Text;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A powder feeder, a blower and a receiver that empties itself.</summary>
public sealed class AuxiliaryTests
{
    private const string Text = """
        plant: 1
        name: Auxiliaries
        ambient: 25 C
        supplies:
          water: {temperature: 25 C, pH: 6.5, balanced_by: sodium, dissolved: {carbonate: 3 mmol/L, chloride: 0.1 mmol/L}}
        reagents:
          AID: {filter_aid: 2.2 kg/L, temperature: 20 C, store: 100 L}
          BRINE: {dissolved: {nitrate: 2 mol/L, potassium: 2 mol/L}, temperature: 25 C, store: 50 L}
        tanks:
          TK1:
            area: 2 m2
            overflow: 6 m3
            heel: 10 L
            starts: {volume: 4 m3, water: water}
            aeration: {blower: B1, shut_off: 40 kPa, rated: 60 m3/h, pressure: 25 kPa, equalises_in: 5 min, lag: 20 s}
            mixing: {agitator: AG1, dead_time: 0 s, lag: 10 s, unmixed_lag: 60 min}
          TK2: {area: 1 m2, overflow: 2 m3, heel: 10 L, starts: {volume: 50 L, water: water}, mixing: {dead_time: 0 s, lag: 1 s}}
        pumps:
          B1: {starts_in: 1 s, speed_from: SC1}
          P1: {starts_in: 50 ms}
          P2: {starts_in: 50 ms}
          P3: {starts_in: 50 ms}
        agitators:
          AG1: {starts_in: 1 s}
        feeders:
          SF1: {starts_in: 50 ms, running: YS1, gives: 66 kg/h, speed_from: SC2}
        lines:
          powder: {from: AID, to: TK1, through: [SF1]}
          brine: {from: BRINE, to: TK1, rate: 1 L/s, through: [P1]}
          filtrate: {from: water, to: TK2, rate: 3.6 m3/h, through: [P2]}
          onward: {from: TK2, to: sewer, rate: 7.2 m3/h, through: [P3], by_level: {shut_at: 100 L, open_at: 300 L}}
        transmitters:
          AT1: {measures: pH, in: TK1, low: 0 pH, high: 14 pH}
        """;

    private static RunningPlant Started(double blower = 1.0, double feeder = 1.0)
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Model(Text));
        plant.Plant.SetValue(plant.Plant.Setpoints.IndexOf("SC1"), blower);
        plant.Plant.SetValue(plant.Plant.Setpoints.IndexOf("SC2"), feeder);
        return plant;
    }

    /// <summary>66 kg/h are 1.1 kg a minute, half of it at half the speed; 0.5 L/min of grains of 2.2 kg/L lift the water.</summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.5)]
    public void A_feeder_gives_powder_by_its_speed(double speed)
    {
        RunningPlant plant = Started(feeder: speed);
        plant.Command(true, "SF1", "AG1");
        plant.Run(600.0);
        plant.Command(false, "SF1");
        plant.Run(120.0);
        Assert.Equal(11.0 * speed, plant.Quantity("TK1.filter_aid") * plant.Quantity("TK1.volume"), 0.01);
        Assert.Equal(4.0 + (0.005 * speed), plant.Quantity("TK1.volume"), 1e-5);
        Assert.Equal(0.0, plant.Balances().Substance, 1e-9);
    }

    [Fact]
    public void A_bridged_feeder_turns_and_gives_nothing()
    {
        RunningPlant plant = Started();
        plant.Inject("SF1.bridged");
        plant.Command(true, "SF1");
        plant.Run(60.0);
        Assert.True(plant.Contact("YS1"));
        Assert.Equal(0.0, plant.Total("AID.used"), 1e-3);
        plant.Clear("SF1.bridged");
        plant.Run(60.0);
        Assert.Equal(0.5, plant.Total("AID.used"), 0.01);
    }

    /// <summary>
    /// Fan laws: at 0.9 of its speed a blower has 0.81 of its pressure at 0.9 of its flow. Under 2 m of water, 19.61 kPa, by hand: sqrt((40 s^2 - 19.61) / 15) x 60 m3/h, and none from
    /// s = 0.700 down. Source of the laws: engineering reference page (secondary); numbers computed.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(1.0, 69.95)]
    [InlineData(0.9, 55.40)]
    [InlineData(0.8, 37.90)]
    [InlineData(0.69, 0.0)]
    public void A_slower_blower_brings_less_air_under_the_same_water(double speed, double expected)
    {
        RunningPlant plant = Started(blower: speed);
        plant.Command(true, "B1");
        plant.Run(5.0);
        Within(expected, plant.Quantity("TK1.air"), 0.02);
    }

    /// <summary>By hand, sqrt((40 - 19.61) / 15) x 60 m3/h = 69.95 m3/h of each; the stand-by alone brings as much as the one on duty.</summary>
    [Theory]
    [InlineData(69.95, "B1")]
    [InlineData(69.95, "B2")]
    [InlineData(139.9, "B1", "B2")]
    public void Each_of_two_blowers_that_are_alike_brings_its_air(double expected, params string[] running)
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Model(Text
            .Replace("blower: B1, ", "blower: B1, alike: [B2], ", StringComparison.Ordinal)
            .Replace("B1: {starts_in: 1 s, speed_from: SC1}", "B1: {starts_in: 1 s}\n  B2: {starts_in: 2 s}", StringComparison.Ordinal)));
        plant.Command(true, running);
        plant.Run(5.0);
        Within(expected, plant.Quantity("TK1.air"), 0.05);
    }

    /// <summary>Blown air takes carbon dioxide out, at 60 m3/h with the time constant of 5 min; what stays and the pH are those of AirTests, 1.43e-5 mol/L.</summary>
    [Fact]
    public void Air_drives_carbon_dioxide_out_and_lifts_the_pH()
    {
        RunningPlant still = Started();
        still.Run(1800.0);
        Assert.Equal(6.5, still.Quantity("TK1.pH"), 0.01);
        RunningPlant blown = Started();
        double before = blown.Quantity("TK1.carbonate");
        blown.Command(true, "B1");
        blown.Run(300.0);

        // Bicarbonate turns into carbon dioxide hardly at all while the pH rises: about what was free of it goes, e times less in 257 s.
        double free = before / (1.0 + Math.Pow(10.0, 6.5 - 6.352));
        Assert.Equal(free * (1.0 - Math.Exp(-300.0 * 69.95 / 60.0 / 300.0)), before - blown.Quantity("TK1.carbonate"), 0.05 * free);
        blown.Run(7200.0);
        Assert.InRange(blown.Quantity("TK1.pH"), 8.2, 8.7);
        Assert.Equal(0.0, blown.Balances().Substance, 1e-9);
    }

    /// <summary>Without its agitator the tank mixes in an hour; 69.95 of 60 m3/h mix it in 20 s x 60 / 69.95.</summary>
    [Fact]
    public void Air_mixes()
    {
        RunningPlant plant = Started();
        plant.Command(true, "B1");
        plant.Run(3.0);
        plant.Command(true, "P1");
        plant.Run(0.2);
        plant.Command(false, "P1");
        plant.Run(20.0 * 60.0 / 69.95);
        double given = plant.Total("BRINE.used") * 2.0;
        Assert.Equal(1.0 - (1.0 / Math.E), plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume") / given, 0.02);
    }

    /// <summary>1 L/s comes, 2 L/s would go with all open: half open is 200 L.</summary>
    [Fact]
    public void A_receiver_keeps_the_level_at_which_as_much_goes_as_comes()
    {
        RunningPlant plant = Started();
        plant.Command(true, "P2", "P3");
        plant.Run(40.0);
        Assert.Equal(0.0, plant.Total("onward.passed"), 1e-6);
        plant.Run(1800.0);
        Assert.Equal(0.2, plant.Quantity("TK2.volume"), 1e-4);
        plant.Inject("onward.float-shut");
        plant.Run(100.0);
        Assert.Equal(0.3, plant.Quantity("TK2.volume"), 1e-3);
        plant.Clear("onward.float-shut");
        plant.Inject("onward.float-open");
        plant.Command(false, "P2");
        plant.Run(300.0);
        Assert.Equal(0.01, plant.Quantity("TK2.volume"), 1e-4);
        Assert.Equal(0.0, plant.Balances().Volume, 1e-9);
    }

    [Theory]
    [InlineData("gives: 66 kg/h", "gives: 66 m3/h", "SEQ0810")]
    [InlineData("gives: 66 kg/h, ", "", "SEQ0806")]
    [InlineData("through: [SF1]", "rate: 1 L/s, through: [SF1]", "SEQ0838")]
    [InlineData("from: AID", "from: BRINE", "SEQ0831")]
    [InlineData("from: AID", "from: water", "SEQ0831")]
    [InlineData("blower: B1", "blower: SF1", "SEQ0831")]
    [InlineData("blower: B1", "blower: B1, alike: [B7]", "SEQ0831")]
    [InlineData("pressure: 25 kPa", "pressure: 45 kPa", "SEQ0834")]
    [InlineData("open_at: 300 L", "open_at: 80 L", "SEQ0834")]
    [InlineData("rate: 3.6 m3/h", "rate: 3.6 m3/h, by_level: {shut_at: 1 L, open_at: 2 L}", "SEQ0803")]
    public void A_mistake_in_an_auxiliary_is_told(string words, string others, string code)
    {
        Assert.Contains(words, Text, StringComparison.Ordinal);
        DiagnosticBag diagnostics = new();
        Assert.Null(PlantReader.Read(new SourceText("plant.yaml", Text.Replace(words, others, StringComparison.Ordinal)), diagnostics));
        Assert.Contains(code, diagnostics.InOrder().Select(diagnostic => diagnostic.Code));
    }
}
