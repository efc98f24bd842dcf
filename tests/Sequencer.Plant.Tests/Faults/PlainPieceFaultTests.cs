using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.Runs;

namespace Sequencer.Plant.Tests.Faults;

/// <summary>What goes wrong with pieces that do nothing by themselves: tanks, supplies and lines.</summary>
public sealed class PlainPieceFaultTests
{
    private static RunningPlant Started()
    {
        RunningPlant plant = RunningPlant.Start(RunningPlant.Site("marlpit-wharf"));
        plant.Command(true, "XV200", "P200");
        plant.Run(400.0);
        plant.Command(true, "AG201");
        plant.Run(60.0);
        return plant;
    }

    /// <summary>0.1 of what it holds at its rim in an hour, by the root of the level; water and salt that leak are in the balances and in a total of their own.</summary>
    [Fact]
    public void A_tank_that_leaks_loses_its_water_and_the_balances_close()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1", "AG1");
        plant.Run(3600.0);
        plant.Command(false, "P1");
        plant.Command(true, "P2");
        plant.Run(60.0);
        plant.Command(false, "P2");
        plant.Run(120.0);
        double before = plant.Quantity("TK1.volume");
        double salt = plant.Quantity("TK1.nitrate");
        Assert.Equal(0.0, plant.Total("TK1.leaked"));
        plant.Inject("TK1.leaks");
        plant.Run(3600.0);

        // V' = -k sqrt(V / V_rim) V_rim with k = 0.1 an hour: the root falls evenly (a prism).
        double root = Math.Sqrt(before / 14.0) - (0.1 / 2.0);
        Assert.Equal(14.0 * root * root, plant.Quantity("TK1.volume"), 1e-3);
        Assert.Equal(1000.0 * (before - plant.Quantity("TK1.volume")), plant.Total("TK1.leaked"), 1e-6);
        Assert.Equal(salt, plant.Quantity("TK1.nitrate"), 1e-5);
        Closed(plant);
        Assert.Equal(plant.Total("TK1.leaked"), plant.Plant.Ledger().Lines.Single(line => line.Name == "leak of TK1").Litres);
        plant.Clear("TK1.leaks");
        plant.Run(1.0);
        double mended = plant.Total("TK1.leaked");
        plant.Run(600.0);
        Assert.Equal(mended, plant.Total("TK1.leaked"), 1e-9);
        Closed(plant);
    }

    /// <summary>Two at once, one of them down to its heel with a pump on it: it gives no more than comes.</summary>
    [Fact]
    public void Tanks_that_leak_down_to_their_heels_stay_there()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Inject("TK2.leaks");
        plant.Command(true, "P7");
        plant.Run(900.0);
        plant.Inject("TK1.leaks");
        plant.Run(1800.0);
        Assert.Equal(0.1, plant.Quantity("TK2.volume"), 1e-5);
        Assert.True(plant.Total("TK2.leaked") > 1.0);
        Assert.True(plant.Total("TK1.leaked") > 1.0);
        Assert.True(plant.Total("back.ran_dry") > 60.0);
        Closed(plant);
    }

    [Fact]
    public void A_supply_that_is_lost_gives_nothing_and_its_pump_runs_dry()
    {
        RunningPlant plant = Started();
        double before = plant.Total("fill.passed");
        plant.Inject("glaze_wash.lost");
        plant.Run(60.0);
        Assert.Equal(before, plant.Total("fill.passed"), 0.2);
        Assert.Equal(60.0, plant.Total("fill.ran_dry"), 0.2);
        Assert.True(plant.Contact("YS200"));
        plant.Clear("glaze_wash.lost");
        plant.Run(60.0);
        Assert.Equal(before + 200.0, plant.Total("fill.passed"), 0.5);
        Assert.Equal(60.0, plant.Total("fill.ran_dry"), 0.2);
    }

    [Fact]
    public void A_line_that_is_blocked_lets_nothing_through_while_pump_and_valve_look_as_if()
    {
        RunningPlant plant = Started();
        double before = plant.Total("fill.passed");
        plant.Inject("fill.blocked");
        plant.Run(60.0);
        Assert.Equal(before, plant.Total("fill.passed"), 0.2);
        Assert.Equal(0.0, plant.Total("fill.ran_dry"));
        Assert.True(plant.Contact("YS200") && plant.Contact("ZSO200"));
        plant.Clear("fill.blocked");
        plant.Run(60.0);
        Assert.Equal(before + 200.0, plant.Total("fill.passed"), 0.5);
    }

    /// <summary>A reagent's line has a dead time: what had left when it blocked still arrives.</summary>
    [Fact]
    public void What_is_on_its_way_when_a_line_blocks_arrives()
    {
        RunningPlant plant = Started();
        plant.Command(true, "P202");
        plant.Run(10.0);
        plant.Inject("ferric.blocked");
        plant.Run(200.0);
        double iron = plant.Quantity("TK201.iron") * plant.Quantity("TK201.volume");
        Assert.Equal(3.0 * plant.Total("FERRIC.used"), iron, 0.01);
        Closed(plant);
    }

    /// <summary>Each piece of a site has a failure mode; a knife's place is none, what drives it is.</summary>
    [Theory]
    [InlineData("fernhollow")]
    [InlineData("marlpit-wharf")]
    [InlineData("quillgate")]
    [InlineData("sedgemere")]
    public void Every_piece_has_a_failure_mode_with_a_name(string site)
    {
        PlantModel model = RunningPlant.Site(site);
        HashSet<string> broken = [.. RunningPlant.Start(model).Plant.Faults.Select(fault => fault.Piece)];
        HashSet<string> knives = [.. model.Drums.Select(drum => drum.Knife)];
        string[] drawnOn = [.. model.Lines.Select(line => line.From)];
        string[] pieces =
        [
            .. model.Supplies.Select(supply => supply.Name).Where(drawnOn.Contains),
            .. model.Reagents.Select(reagent => reagent.Name),
            .. model.Tanks.Select(tank => tank.Name).Where(tank => !knives.Contains(tank)),
            .. model.Drives.Select(drive => drive.Tag),
            .. model.Lines.Where(line => !knives.Contains(line.From) && !knives.Contains(line.To)).Select(line => line.DosingLine ?? line.Name),
            .. model.SampleLoops.Select(loop => loop.Name),
            .. model.Drums.Select(drum => drum.Name),
            .. model.Drums.Select(drum => drum.SealWater?.Name).OfType<string>(),
            .. model.Presses.Select(press => press.Name),
            .. model.Transmitters.Select(transmitter => transmitter.Tag),
            .. model.Switches.Select(threshold => threshold.Tag),
            .. model.HandSwitches.Select(hand => hand.Tag),
        ];
        Assert.Empty(pieces.Except(broken));
    }

    private static void Closed(RunningPlant plant)
    {
        PlantBalances balances = plant.Balances();
        Assert.InRange(balances.Volume, -1e-9, 1e-9);
        Assert.InRange(balances.Substance, -1e-9, 1e-9);
    }
}
