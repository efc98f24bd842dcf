namespace Sequencer.Plant.Tests.Runs;

/// <summary>Where water is too strong for the activities, the balances of the run say so.</summary>
public sealed class StrongWaterTests
{
    /// <summary>17.6 mol/L of caustic at 60 L/h into some litres: far beyond 0.5 mol/kg within a minute.</summary>
    [Fact]
    public void A_tank_that_was_too_strong_is_named()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(30.0);
        plant.Command(false, "P1");
        Assert.Equal("", plant.Balances().TooStrong);
        plant.Command(true, "P3", "AG1");
        plant.Run(240.0);
        Assert.Equal("TK1", plant.Balances().TooStrong);
        plant.Command(false, "P3");
        plant.Command(true, "P1");
        plant.Run(3000.0);
        Assert.InRange(plant.Quantity("TK1.sodium"), 10.0, 100.0);
        Assert.Equal("TK1", plant.Balances().TooStrong);
    }
}
