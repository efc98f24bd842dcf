using Sequencer.Plant.Description;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A state that cannot be ends the run with the equation and the piece named. What is described here no file could say: it is changed behind the reader's back.</summary>
public sealed class UnphysicalStateTests
{
    private static PlantFailure Failure(PlantModel model, double seconds, params string[] energised) => Stopped(model, seconds, energised).Failure;

    private static (PlantFailure Failure, double Time) Stopped(PlantModel model, double seconds, params string[] energised)
    {
        IPlant plant = PlantRun.Start(model, 1);
        Energise(plant, energised, true);
        for (double passed = 0.0; passed < seconds && plant.Failure is null; passed += 1.0)
        {
            plant.Advance(1.0);
        }

        return (plant.Failure ?? throw new InvalidOperationException("the run went on"), plant.Time);
    }

    private static void Energise(IPlant plant, string[] tags, bool energised)
    {
        foreach (string tag in tags)
        {
            plant.Command(plant.Actuators.IndexOf(tag), energised);
        }
    }

    private static void Stops(string equation, string place, string quantity, string unit, PlantFailure failure)
    {
        Assert.Equal((equation, place), (failure.Equation, failure.Place));
        Assert.Matches($"^{quantity} is -?[0-9.E+]+ {unit}(, and no (more|less) than -?[0-9.E+]+ {unit} can be)?$", failure.Explanation);
    }

    private static PlantModel Drum(Func<DrumDescription, DrumDescription> changed)
    {
        PlantModel model = RunningPlant.Model(DrumTests.Text);
        return model with { Drums = [changed(model.Drums[0])] };
    }

    [Fact]
    public void A_vacuum_beyond_what_its_pump_reaches() =>
        Stops("vacuum", "F1", "vacuum", "Pa", Failure(Drum(drum => drum with { BareClothPascals = -20e3 }), 60.0, "M1", "VP1"));

    /// <summary>The equations are stepped ahead of the scans, as far as two minutes; what is found there counts when its time comes.</summary>
    [Fact]
    public void The_run_stops_in_the_scan_of_the_failure()
    {
        string[] running = ["M1", "VP1"];
        PlantModel model = ColdSealWater(-5.0);
        (PlantFailure failure, double time) = Stopped(model, 36000.0, running);
        Assert.InRange(failure.TimeSeconds, time, time + 1.0);
        IPlant saved = PlantRun.Start(model, 1);
        Energise(saved, running, true);
        while (saved.Time < time - 20.5)
        {
            saved.Advance(1.0);
        }

        Energise(saved, running, false);
        saved.Advance(600.0);
        Assert.Null(saved.Failure);
    }

    [Fact]
    public void A_coat_of_less_than_nothing() =>
        Stops("coat, cake and filtrate", "F1", "filter_aid on the drum", "g", Failure(Drum(drum => drum with { ClothHoldsBack = -1.0 }), 600.0, "M1", "VP1", "M3"));

    [Fact]
    public void A_press_that_holds_less_than_nothing()
    {
        PlantModel model = RunningPlant.Model(PressTests.Text());
        Stops("cakes and filtrate", "FP1", "suspended in the press", "g", Failure(model with { Presses = [model.Presses[0] with { ClothHoldsBack = -9.0, ClosesAtMetres = 1e3 }] }, 1200.0, "P1"));
    }

    [Fact]
    public void Flocs_that_rise()
    {
        PlantModel model = SettlingTests.Model;
        TankDescription tank = model.Tanks[0];
        PlantModel upside = model with { Tanks = [tank with { Settling = tank.Settling! with { GrainKilogramsPerCubicMetre = 100.0, FlocMetres = 1e-3 } }, .. model.Tanks[1..]] };
        IPlant plant = PlantRun.Start(upside, 1);
        int agitator = plant.Actuators.IndexOf("AG1");
        plant.Command(agitator, true);
        plant.Advance(1800.0);
        plant.Command(agitator, false);
        plant.Advance(1800.0);
        Stops("settling", "TK1", "clear water", "L", plant.Failure ?? throw new InvalidOperationException("the run went on"));
    }

    [Fact]
    public void Seal_water_colder_than_ice()
    {
        PlantModel model = ColdSealWater(-500.0);
        Stops("heat of the seal water", model.Drums[0].SealWater!.Name, "temperature", "C", Failure(model, 600.0, "M1", "VP1"));
    }

    private static PlantModel ColdSealWater(double heatKilowatts)
    {
        PlantModel model = RunningPlant.Model(SealWaterTests.Text);
        DrumDescription drum = model.Drums[0];
        return model with { Drums = [drum with { SealWater = drum.SealWater! with { HeatKilowatts = heatKilowatts, CoolerKilowattsPerKelvin = 1e-9 } }] };
    }

    [Fact]
    public void A_receiver_hotter_than_steam()
    {
        PlantModel model = RunningPlant.Model(DrumTests.Text);
        TankDescription receiver = model.Tanks[1];
        Stops("balance of heat", "RECEIVER", "the temperature", "C", Failure(
            model with { AmbientCelsius = 900.0, Tanks = [model.Tanks[0], receiver with { HeatLossSeconds = 60.0 }, model.Tanks[2]] }, 600.0, "M1"));
    }
}
