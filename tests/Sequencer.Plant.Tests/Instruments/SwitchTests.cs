using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.Runs;

namespace Sequencer.Plant.Tests.Instruments;

/// <summary>Switches of all that changes in a plant: each turns where the value passes its threshold, and back past its hysteresis.</summary>
public sealed class SwitchTests
{
    private const string Switches = """
          PSL1: {measures: pressure, in: P1, at_full_speed: 3 bar, below: 1 bar, normally_closed: yes}
          FSL1: {measures: flow, in: fill, below: 5 m3/h, hysteresis: 1 m3/h, normally_closed: yes}
          TSH1: {measures: temperature, in: TK1, above: 40 C, hysteresis: 2 C}
          ASH1: {measures: pH, in: TK1, above: 9 pH, hysteresis: 0.5 pH}
          CSH1: {measures: conductivity, in: TK1, above: 3 mS/cm}
        """;

    [Fact]
    public void Pressure_flow_and_temperature_turn_their_switches_and_turn_them_back()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(rest: Switches));
        Assert.False(plant.Contact("PSL1") || plant.Contact("FSL1") || plant.Contact("TSH1"));
        plant.Command(true, "P1", "P5");
        plant.Run(60.0);
        Assert.True(plant.Contact("PSL1") && plant.Contact("FSL1"));
        Assert.Equal(40.0, plant.Quantity("TK1.temperature"), 0.5);
        plant.Command(false, "P1");
        plant.Run(60.0);
        Assert.False(plant.Contact("PSL1") || plant.Contact("FSL1"));
        Assert.True(plant.Contact("TSH1"));
        plant.Command(false, "P5");
        plant.Command(true, "P1");
        Assert.True(plant.RunUntil(() => plant.Quantity("TK1.temperature") < 38.1, 600.0));
        Assert.True(plant.Contact("TSH1"));
        Assert.True(plant.RunUntil(() => plant.Quantity("TK1.temperature") < 37.9, 60.0));
        Assert.False(plant.Contact("TSH1"));
    }

    [Fact]
    public void pH_and_conductivity_turn_theirs()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(rest: Switches));
        plant.Command(true, "P1", "AG1");
        plant.Run(60.0);
        plant.Command(false, "P1");
        plant.Run(5.0);
        Assert.False(plant.Contact("ASH1") || plant.Contact("CSH1"));
        plant.Command(true, "P3");
        plant.Run(10.0);
        plant.Command(false, "P3");
        plant.Run(100.0);
        Assert.True(plant.Quantity("TK1.pH") > 9.0 && plant.Quantity("TK1.conductivity") > 3.0);
        Assert.True(plant.Contact("ASH1") && plant.Contact("CSH1"));
    }

    /// <summary>-65 kPa shut, -25 through bare cloth, both within a time constant of 8 s: the vacuum is not there, comes, and is lost again.</summary>
    [Fact]
    public void A_drum_without_its_vacuum_turns_a_switch()
    {
        PlantModel model = RunningPlant.Site("marlpit-wharf");
        SwitchDescription lost = new("PSH220", Measured.Pressure, "F220", ActsAbove: true, -20.0, 2.0, NormallyClosed: true);
        RunningPlant plant = RunningPlant.Start(model with { Switches = [.. model.Switches, lost] });
        plant.Run(1.0);
        Assert.False(plant.Contact("PSH220"));
        plant.Command(true, "VP220", "XV222");
        plant.Run(60.0);
        Assert.True(plant.Quantity("F220.vacuum") < -22.0);
        Assert.True(plant.Contact("PSH220"));
        plant.Inject("VP220.no-flow");
        plant.Run(60.0);
        Assert.False(plant.Contact("PSH220"));
    }

    /// <summary>Quillgate has chromium(VI) and sulphite.</summary>
    [Fact]
    public void Redox_turns_its_switch()
    {
        PlantModel model = RunningPlant.Site("quillgate");
        SwitchDescription reduced = new("ASL102", Measured.Redox, "TK101", ActsAbove: false, 250.0, 20.0, NormallyClosed: false);
        RunningPlant plant = RunningPlant.Start(model with { Switches = [.. model.Switches, reduced] });
        plant.Plant.SetValue(plant.Plant.Setpoints.IndexOf("SC101"), 1.0);
        plant.Command(true, "P100", "XV100", "AG101");
        plant.Run(600.0);
        plant.Command(false, "P100", "XV100");
        plant.Command(true, "P102");
        plant.Run(200.0);
        plant.Command(false, "P102");
        plant.Run(100.0);
        Assert.InRange(plant.Quantity("TK101.pH"), 1.0, 3.0);
        Assert.False(plant.Contact("ASL102"));
        plant.Command(true, "P103");
        plant.Run(600.0);
        Assert.True(plant.Contact("ASL102"));
    }

    /// <summary>Glaze wash of 4 g/L into water without solids: 1 g/L is there when a third as much has come.</summary>
    [Fact]
    public void Turbidity_turns_its_switch()
    {
        PlantModel model = RunningPlant.Site("marlpit-wharf");
        SwitchDescription cloudy = new("ASH201", Measured.Turbidity, "TK201", ActsAbove: true, 100.0, 1.0, NormallyClosed: false, PerSuspended: 100.0);
        RunningPlant plant = RunningPlant.Start(model with { Switches = [.. model.Switches, cloudy] });
        plant.Run(60.0);
        Assert.False(plant.Contact("ASH201"));
        plant.Command(true, "P200", "XV200");
        Assert.True(plant.RunUntil(() => plant.Contact("ASH201"), 600.0));
        Assert.Equal(0.2 * 4.0 / 3.0, plant.Quantity("TK201.volume"), 0.002);
    }
}
