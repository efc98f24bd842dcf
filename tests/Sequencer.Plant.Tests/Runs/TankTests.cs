namespace Sequencer.Plant.Tests.Runs;

public sealed class TankTests
{
    /// <summary>12 m3 at 8 m3/h is 1.50 h (arithmetic).</summary>
    [Fact]
    public void Filling_takes_the_volume_over_the_rate()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        Assert.True(plant.RunUntil(() => !plant.Contact("LSH1"), 6000.0));
        // 2 L were there already; the switch is looked at every scan.
        Assert.Equal(5400.0 * (12_000.0 - 2.0) / 12_000.0, plant.Plant.Time, 0.2);
        Assert.Equal(plant.Quantity("TK1.volume") * 1000.0 - 2.0, plant.Total("fill.passed"), 1e-6);
    }

    /// <summary>100 mol of 17.6 mol/L at 60 L/h takes 341 s (arithmetic).</summary>
    [Fact]
    public void Dosing_takes_the_amount_over_strength_and_rate()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(4500.0);
        plant.Command(false, "P1");
        plant.Command(true, "P3", "AG1");
        double before = plant.Quantity("TK1.sodium") * plant.Quantity("TK1.volume");
        plant.Run(341.0);
        plant.Command(false, "P3");
        plant.Run(300.0);
        Assert.Equal(100.0, (plant.Quantity("TK1.sodium") * plant.Quantity("TK1.volume")) - before, 0.1);
    }

    /// <summary>
    /// What a valve with three ways does not pass goes the other way. Its stroke of 4 s up and down passes the same in each
    /// direction, so that the other way gets the flow for as long as the command lasts (arithmetic).
    /// </summary>
    [Fact]
    public void A_valve_with_three_ways_parts_a_flow_that_nothing_stops()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(lines: """
              one_way: {from: water, to: TK1, rate: 8 m3/h, not_through: [XV1]}
              other_way: {from: water, to: TK2, rate: 8 m3/h, through: [XV1]}
            """));
        plant.Run(10.0);
        Assert.Equal(10.0 * 8000.0 / 3600.0, plant.Total("one_way.passed"), 1e-6);
        Assert.Equal(0.0, plant.Total("other_way.passed"));
        plant.Command(true, "XV1");
        plant.Run(58.0);
        plant.Command(false, "XV1");
        plant.Run(10.0);
        Assert.Equal(58.0 * 8000.0 / 3600.0, plant.Total("other_way.passed"), 1e-6);
        Assert.Equal(78.0 * 8000.0 / 3600.0, plant.Total("one_way.passed") + plant.Total("other_way.passed"), 1e-6);
    }

    [Fact]
    public void A_switch_returns_by_its_hysteresis_and_a_transmitter_follows_with_its_lag()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.RunUntil(() => !plant.Contact("LSH1"), 6000.0);
        // Behind a steady rise of 2.222 L/s a lag of 2 s reads 4.44 L too low.
        Assert.Equal((plant.Quantity("TK1.volume") * 1000.0) - 4.444, plant.Reading("LT1") * 1000.0, 0.01);
        plant.Command(false, "P1");
        plant.Command(true, "P4");
        plant.RunUntil(() => plant.Contact("LSH1"), 600.0);
        Assert.Equal(11.5, plant.Quantity("TK1.volume"), 0.001);
    }

    /// <summary>4 mA at -500 mV and 20 mA at 1000 mV: 100 mV is 10.4 mA (arithmetic).</summary>
    [Fact]
    public void A_redox_probe_shows_the_potential_that_the_description_says_whatever_is_dosed()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(
            instruments: "AT2: {measures: redox, in: TK1, steady: 100 mV, low: -500 mV, high: 1000 mV}"));
        plant.Command(true, "P1", "P3");
        for (int minute = 0; minute < 5; minute++)
        {
            plant.Run(60.0);
            Assert.Equal(100.0, plant.Reading("AT2"), 1e-9);
        }
    }

    /// <summary>The equations are followed ahead of the clock: a rim that lies there must be forgotten when a pump starts before it.</summary>
    [Fact]
    public void A_tank_that_would_have_run_over_does_not_when_it_is_emptied_in_time()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        Assert.True(plant.RunUntil(() => plant.Quantity("TK1.volume") > 13.95, 7200.0));
        plant.Command(true, "P4");
        plant.Run(60.0);
        Assert.Equal(0.0, plant.Total("TK1.overflowed"));
        Assert.InRange(plant.Quantity("TK1.volume"), 13.0, 13.95);
    }

    [Fact]
    public void A_full_tank_runs_over_and_loses_what_comes()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(7200.0);
        Assert.Equal(14.0, plant.Quantity("TK1.volume"), 1e-6);
        Assert.Equal(1.0, plant.Quantity("TK1.overflowing"));
        Assert.Equal(plant.Total("fill.passed") + 2.0 - 14_000.0, plant.Total("TK1.overflowed"), 1e-3);
        plant.Command(true, "P4");
        plant.Run(60.0);
        Assert.Equal(0.0, plant.Quantity("TK1.overflowing"));
        Assert.Equal(14_000.0 - (60.0 * 8000.0 / 3600.0), plant.Quantity("TK1.volume") * 1000.0, 0.2);
    }

    [Fact]
    public void A_drawn_down_tank_gives_no_more_than_comes_in()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(100.0);
        plant.Command(true, "P4");
        plant.Run(200.0);
        Assert.Equal(1.0, plant.Quantity("TK1.volume") * 1000.0, 1e-3);
        Assert.Equal(8000.0 / 60.0, plant.Quantity("empty.flow"), 1e-6);
        plant.Command(false, "P1");
        plant.Run(10.0);
        Assert.Equal(0.0, plant.Quantity("empty.flow"), 1e-9);
        Assert.Equal(1.0, plant.Quantity("TK1.volume") * 1000.0, 1e-3);
    }

    /// <summary>Torricelli between two levels: t = 2 A / (Cd a sqrt(2 g)) (sqrt h1 - sqrt h2).</summary>
    [Fact]
    public void A_free_outlet_drains_by_the_head_above_it()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(1800.0);
        plant.Command(false, "P1");
        plant.Command(true, "XV1");
        plant.Run(4.0);
        double start = plant.Plant.Time;
        double from = plant.Quantity("TK1.level");
        plant.RunUntil(() => plant.Quantity("TK1.level") <= 0.5, 3600.0);
        double hole = Math.PI / 4.0 * 0.05 * 0.05;
        double expected = 2.0 * 2.0 / (0.6 * hole * Math.Sqrt(2.0 * 9.80665)) * (Math.Sqrt(from) - Math.Sqrt(0.5));
        Assert.Equal(expected, plant.Plant.Time - start, 0.2);
    }

    [Fact]
    public void Mixed_waters_have_their_mean_temperature_and_cool_to_ambient()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model(tank: ", heat_loss: 2 h"));
        plant.Command(true, "P1", "P5");
        plant.Run(600.0);
        plant.Command(false, "P1", "P5");
        plant.Run(0.2);
        double warm = plant.Quantity("TK1.temperature");
        Assert.InRange(warm, 38.0, 40.0);
        plant.Run(7200.0);
        Assert.Equal(20.0 + ((warm - 20.0) / Math.E), plant.Quantity("TK1.temperature"), 0.01);
    }

    /// <summary>
    /// Dosing at a steady rate r from t = 0 with dead time d and lag tau: the bulk holds
    /// r ((t - d) - tau (1 - exp(-(t - d) / tau))), from the first-order equations by hand.
    /// </summary>
    [Fact]
    public void A_reagent_reaches_the_bulk_after_the_dead_time_with_the_lag()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1", "AG1");
        plant.Run(600.0);
        plant.Command(false, "P1");
        plant.Run(10.0);
        plant.Command(true, "P2");
        double rate = 60.0 / 3600.0 * 2.0;
        double start = plant.Plant.Time + 0.025;
        foreach (double time in new[] { 5.0, 6.5, 10.0, 16.0, 30.0, 60.0 })
        {
            plant.Run(time - (plant.Plant.Time - start + 0.025));
            double since = Math.Max(0.0, plant.Plant.Time - start - 6.0);
            double expected = rate * (since - (10.0 * (1.0 - Math.Exp(-since / 10.0))));
            Assert.Equal(expected, plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume"), 1e-4 * (1.0 + expected));
        }
    }

    [Fact]
    public void What_goes_from_tank_to_tank_and_back_is_neither_made_nor_lost()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1", "P2", "AG1");
        plant.Run(1200.0);
        plant.Command(false, "P1", "P2");
        plant.Run(120.0);
        double Nitrate() => (plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume")) + (plant.Quantity("TK2.nitrate") * plant.Quantity("TK2.volume"));
        double before = Nitrate();
        plant.Command(true, "P6", "P7");
        plant.Run(1200.0);
        Assert.Equal(before, Nitrate(), 1e-3);
        Assert.Equal(0.2 + (1200.0 * 3.0 / 3600.0), plant.Quantity("TK2.volume"), 0.001);
        Assert.InRange(plant.Balances().Substance, -1e-12, 1e-12);
        // The second tank runs over: what it loses is the only thing missing.
        plant.Command(false, "P7");
        plant.Command(true, "P1");
        plant.Run(1500.0);
        Assert.Equal(3.0, plant.Quantity("TK2.volume"), 1e-6);
        Assert.True(plant.Total("TK2.overflowed") > 500.0);
        Assert.InRange(plant.Balances().Substance, -1e-12, 1e-12);
        Assert.InRange(plant.Balances().Volume, -1e-12, 1e-12);
    }

    [Fact]
    public void Without_agitation_a_reagent_stays_where_it_fell()
    {
        RunningPlant plant = RunningPlant.Start(PlainTank.Model());
        plant.Command(true, "P1");
        plant.Run(600.0);
        plant.Command(false, "P1");
        plant.Command(true, "P2");
        plant.Run(60.0);
        plant.Command(false, "P2");
        plant.Run(60.0);
        double mixed = plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume");
        Assert.InRange(mixed, 0.0, 0.06 * 2.0);
        plant.Command(true, "AG1");
        plant.Run(120.0);
        Assert.Equal(2.0, plant.Quantity("TK1.nitrate") * plant.Quantity("TK1.volume"), 0.01);
    }
}
