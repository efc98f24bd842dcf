namespace Sequencer.Plant.Tests.Runs;

/// <summary>The demo plants by hand, held against the hand calculations in their descriptions.</summary>
public sealed class DemoBatchTests
{
    /// <summary>Hand calculation in tests/Sequencer.Testing/Sites/one-pit/plant.yaml: about 3.6 L of caustic, less what the heel of mains water brings.</summary>
    [Fact]
    public void A_pit_of_acid_takes_the_caustic_of_the_hand_calculation()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Site("one-pit"));
        plant.Command(true, "XV300", "AG301");
        Assert.True(plant.RunUntil(() => !plant.Contact("LSH301"), 2400.0));
        plant.Command(false, "XV300");
        plant.Run(60.0);
        Assert.Equal(2.0, plant.Quantity("TK301.pH"), 0.1);
        int pulses = 0;
        for (double reading = plant.Reading("AT301"); reading < 7.0 && pulses < 80; reading = plant.Reading("AT301"), pulses++)
        {
            Pulse(plant, "P304", reading < 3.5 ? 60.0 : reading < 6.0 ? 15.0 : 5.0, 45.0);
        }

        Assert.InRange(pulses, 30, 45);
        Assert.InRange(plant.Quantity("TK301.pH"), 7.0, 8.5);
        Assert.Equal(3.6, plant.Total("CAUSTIC.used"), 0.36);
        plant.Command(true, "XV321", "P320A");
        Assert.True(plant.RunUntil(() => !plant.Contact("LSL301"), 900.0));
        Assert.InRange(plant.Total("discharge.pH_lowest"), 7.0, 8.5);
        Assert.InRange(plant.Total("discharge.pH_highest"), 7.0, 8.5);
    }

    /// <summary>Hand calculation in sequences/marlpit-wharf/plant.yaml: 2.9 L of ferric to pH 5.5, 11.8 L of lime to pH 9.5 with what the line keeps.</summary>
    [Fact]
    public void A_tank_of_wash_water_takes_the_ferric_and_lime_of_the_hand_calculation()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Site("marlpit-wharf"));
        plant.Command(true, "XV200", "P200", "AG203");
        plant.Run(300.0);
        plant.Command(true, "AG201", "P205");
        Assert.True(plant.RunUntil(() => plant.Reading("LT201") >= 12.0, 4000.0));
        Assert.Equal(3540.0, plant.Plant.Time, 60.0);
        plant.Command(false, "XV200", "P200");
        plant.Run(90.0);
        Assert.Equal(7.8, plant.Quantity("TK201.pH"), 0.05);
        for (int pulses = 0; plant.Reading("AT201") > 5.5 && pulses < 60; pulses++)
        {
            Pulse(plant, "P202", 7.0, 90.0);
        }

        Assert.Equal(2.9, plant.Total("FERRIC.used"), 0.3);
        for (int pulses = 0; plant.Reading("AT201") < 9.3 && pulses < 60; pulses++)
        {
            Pulse(plant, "P203", plant.Reading("AT201") < 8.0 ? 30.0 : 6.0, 90.0);
        }

        double before = plant.Quantity("TK201.pH");
        Assert.Equal(0.95, plant.Quantity("L206.lime"), 0.02);
        plant.Command(true, "XV206");
        plant.Run(120.0);
        plant.Command(false, "XV206");
        plant.Run(300.0);
        Assert.Equal(0.0, plant.Quantity("L206.lime"), 0.01);
        Assert.InRange(plant.Quantity("TK201.pH") - before, 0.1, 0.3);
        Assert.Equal(12.6, plant.Total("LIME.used"), 1.3);
        Assert.True(plant.Contact("LSHH201"), "the switch is normally closed and the tank not at high-high");
    }

    private static void Pulse(RunningPlant plant, string pump, double seconds, double pause)
    {
        plant.Command(true, pump);
        plant.Run(seconds);
        plant.Command(false, pump);
        plant.Run(pause);
    }
}
