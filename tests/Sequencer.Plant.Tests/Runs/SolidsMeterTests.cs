using Sequencer.Plant.Description;
using Sequencer.Plant.Ledger;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>Dry solids of the ledger: what passed the lines is what tanks have more or less, as closely as they were looked at.</summary>
public sealed class SolidsMeterTests
{
    private const double SecondsBetweenLooks = 10.0;

    /// <summary>Filter aid is put into water and pumped away: the two lines and the tank make up the balance.</summary>
    [Fact]
    public void What_went_through_the_lines_is_what_the_tanks_have_more()
    {
        PlantModel model = RunningPlant.Site("marlpit-wharf");
        RunningPlant plant = RunningPlant.Start(model);
        Run(plant, 300.0, "XV210", "AG210");
        Run(plant, 420.0, "M211", "AG210");
        Run(plant, 200.0, "P210", "AG210");
        PlantLedger ledger = plant.Plant.Ledger();
        double put = Line(ledger, "filter_aid");
        double pumped = Line(ledger, "coating");
        TankLedger tank = ledger.Tanks.Single(tank => tank.Name == "TK210");
        Assert.Equal(2.27 * 7.0 * 2.2, put, 0.02 * put);
        Assert.InRange(pumped, 0.3 * put, 0.7 * put);
        Assert.Equal(put - pumped, tank.SolidKilograms, 0.01 * put);
        Assert.Equal(pumped, ledger.Tanks.Single(tank => tank.Name == "TROUGH").SolidKilograms, 0.01 * put);
    }

    private static double Line(PlantLedger ledger, string name) => ledger.Lines.Single(line => line.Name == name).SolidKilograms;

    private static void Run(RunningPlant plant, double seconds, params string[] drives)
    {
        plant.Command(true, drives);
        for (double done = 0.0; done < seconds; done += SecondsBetweenLooks)
        {
            plant.Plant.MeterSolids();
            plant.Run(SecondsBetweenLooks);
        }

        plant.Command(false, drives);
        plant.Run(SecondsBetweenLooks);
        plant.Plant.MeterSolids();
    }
}
