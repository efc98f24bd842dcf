namespace Sequencer.Plant.Tests.Runs;

/// <summary>A tank at its heel gives no more than comes, whatever brings it and whenever something is commanded.</summary>
public sealed class HeelTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void No_tank_falls_below_its_heel_whenever_pumps_start_and_stop(int seed)
    {
        Random random = new(seed);
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        string[] pumps = ["P1", "P4", "P6", "P7"];
        for (int scan = 0; scan < 5000; scan++)
        {
            if (random.Next(4) == 0)
            {
                plant.Command(random.Next(2) == 0, pumps[random.Next(pumps.Length)]);
            }

            plant.Run(RunningPlant.ScanSeconds);
            Assert.True(plant.Quantity("TK1.volume") > 0.99e-3, $"scan {scan}: {plant.Quantity("TK1.volume")} m3");
            Assert.True(plant.Quantity("TK2.volume") > 99.99e-3, $"scan {scan}: {plant.Quantity("TK2.volume")} m3");
        }

        Assert.InRange(Math.Abs(plant.Balances().Volume), 0.0, 1e-9);
    }

    /// <summary>Water of 20 C and water of 60 C at most: a step past the point where 1 L in 0.2 s is gone would make it colder.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    public void Mixed_waters_are_no_colder_and_no_warmer_than_both(int seed)
    {
        Random random = new(seed);
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        string[] pumps = ["P1", "P4", "P5", "P6", "P7"];
        for (int scan = 0; scan < 5000; scan++)
        {
            if (random.Next(8) == 0)
            {
                plant.Command(random.Next(2) == 0, pumps[random.Next(pumps.Length)]);
            }

            plant.Run(RunningPlant.ScanSeconds);
            Assert.InRange(plant.Quantity("TK1.temperature"), 19.9, 60.1);
            Assert.InRange(plant.Quantity("TK2.temperature"), 19.9, 60.1);
        }
    }

    /// <summary>4 m3/h are pumped back from the receiver, more than the drum gives: from its heel on just that.</summary>
    [Fact]
    public void A_receiver_at_its_heel_passes_on_the_filtrate_that_comes()
    {
        RunningPlant drum = RunningPlant.Start(RunningPlant.Model(DrumTests.Text));
        drum.Command(true, "M1", "VP1", "M3", "P2");
        drum.Run(20.0);
        drum.Command(false, "M3");
        Assert.True(drum.RunUntil(() => drum.Quantity("RECEIVER.volume") < 1.0001e-3, 3.0 * 3600.0));
        long steps = ((PlantRun)drum.Plant).Effort.Steps;
        for (int minute = 0; minute < 30; minute++)
        {
            drum.Run(60.0);
            Assert.Equal(1.0e-3, drum.Quantity("RECEIVER.volume"), 2e-6);
        }

        Assert.True(((PlantRun)drum.Plant).Effort.Steps - steps < 1000, $"{((PlantRun)drum.Plant).Effort.Steps - steps} steps in half an hour");
        Assert.InRange(drum.Quantity("F1.filtrate"), 0.5, 3.9);
        Assert.InRange(Math.Abs(drum.Balances().Volume), 0.0, 1e-9);
    }
}
