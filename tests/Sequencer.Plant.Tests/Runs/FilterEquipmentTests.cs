using Sequencer.Plant.Description;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A three-way valve, a vacuum pump, a turbidity probe and a drum with a mark.</summary>
public sealed class FilterEquipmentTests
{
    private static readonly PlantModel Model = RunningPlant.Model("""
        plant: 1
        name: Filter equipment
        ambient: 20 C
        supplies:
          water: {temperature: 20 C, pH: 7.0, balanced_by: chloride, dissolved: {sodium: 10 mmol/L}}
        tanks:
          TK1: {area: 2 m2, overflow: 14 m3, heel: 1 L, starts: {volume: 2 L, water: water}, mixing: {dead_time: 1 s, lag: 5 s}}
          TK2: {area: 2 m2, overflow: 14 m3, heel: 1 L, starts: {volume: 2 L, water: water}, mixing: {dead_time: 1 s, lag: 5 s}}
        pumps:
          P1: {starts_in: 50 ms}
          VP1: {starts_in: 50 ms}
          M1: {starts_in: 50 ms}
        valves:
          XV1: {travel: 10 s}
        lines:
          energised: {from: water, to: TK1, rate: 3.6 m3/h, through: [P1, XV1]}
          at_rest: {from: water, to: TK2, rate: 3.6 m3/h, through: [P1], not_through: [XV1]}
        transmitters:
          PT1: {measures: pressure, in: VP1, at_full_speed: -60 kPa, low: -100 kPa, high: 0 kPa, lag: 10 s}
          AT1: {measures: turbidity, in: TK1, steady: 8 NTU, low: 0 NTU, high: 100 NTU}
        switches:
          SS1: {measures: turns, in: M1, every: 90 s}
        """);

    /// <summary>3.6 m3/h is 1 L/s. A stroke of 10 s shares its water evenly, 5 L to each side.</summary>
    [Fact]
    public void A_three_way_valve_sends_all_water_one_way_or_the_other()
    {
        RunningPlant plant = RunningPlant.Start(Model);
        plant.Command(true, "P1");
        plant.Run(60.0);
        Assert.Equal(0.0, plant.Total("energised.passed"));
        double before = plant.Total("at_rest.passed");
        Assert.Equal(60.0, before, 0.1);
        plant.Command(true, "XV1");
        plant.Run(60.0);
        Assert.Equal(55.0, plant.Total("energised.passed"), 0.1);
        Assert.Equal(before + 5.0, plant.Total("at_rest.passed"), 0.1);
    }

    /// <summary>A first-order lag of 10 s has done 1 - 1/e of its way after 10 s; a pump that moves nothing holds no vacuum.</summary>
    [Fact]
    public void A_vacuum_builds_up_with_its_pump_and_is_lost_with_it()
    {
        RunningPlant plant = RunningPlant.Start(Model);
        plant.Run(5.0);
        Assert.Equal(0.0, plant.Reading("PT1"), 1e-6);
        plant.Command(true, "VP1");
        plant.Run(10.0);
        Assert.Equal(-60.0 * (1.0 - Math.Exp(-1.0)), plant.Reading("PT1"), 0.5);
        plant.Run(100.0);
        Assert.Equal(-60.0, plant.Reading("PT1"), 0.1);
        plant.Inject("VP1.no-flow");
        plant.Run(100.0);
        Assert.Equal(0.0, plant.Reading("PT1"), 0.1);
    }

    [Fact]
    public void A_turbidity_probe_shows_what_the_description_says()
    {
        RunningPlant plant = RunningPlant.Start(Model);
        plant.Run(60.0);
        Assert.Equal(8.0, plant.Reading("AT1"), 1e-6);
        plant.Inject("AT1.stuck-high");
        plant.Run(1.0);
        Assert.Equal(100.0, plant.Reading("AT1"), 1e-6);
    }

    /// <summary>Ten turns of 90 s, each with a contact of 9 s; none while the drum stands.</summary>
    [Fact]
    public void A_mark_passes_its_switch_once_a_turn()
    {
        RunningPlant plant = RunningPlant.Start(Model);
        plant.Command(true, "M1");
        (int edges, double made) = Watch(plant, 900.0);
        Assert.Equal(10, edges);
        Assert.Equal(90.0, made, 2.0);
        plant.Command(false, "M1");
        Assert.Equal(0, Watch(plant, 300.0).Edges);
    }

    private static (int Edges, double Made) Watch(RunningPlant plant, double seconds)
    {
        int edges = 0;
        double made = 0.0;
        bool before = plant.Contact("SS1");
        for (double passed = 0.0; passed < seconds; passed += 0.1)
        {
            plant.Run(0.1);
            bool now = plant.Contact("SS1");
            edges += now && !before ? 1 : 0;
            made += now ? 0.1 : 0.0;
            before = now;
        }

        return (edges, made);
    }
}
