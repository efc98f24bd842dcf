namespace Sequencer.Plant.Tests.Runs;

/// <summary>Of a metal that a settling tank, a drum or a press holds, only what the water has as a solid settles, is caught and makes it turbid; what is dissolved passes.</summary>
public sealed class HeldMetalTests
{
    private const double Grams = 1.5e-3 * 106.87;

    private const string Waters = """
        plant: 1
        name: Iron
        ambient: 20 C
        chemistry: {precipitates: [ferrihydrite]}
        supplies:
          acid: {temperature: 20 C, pH: 1.9, balanced_by: chloride, dissolved: {iron: 1.5 mmol/L, sodium: 1 mmol/L}}
          neutral: {temperature: 20 C, pH: 7.5, balanced_by: sodium, dissolved: {iron: 1.5 mmol/L, chloride: 4.5 mmol/L}}
          clean: {temperature: 20 C, pH: 7.5, balanced_by: chloride, dissolved: {sodium: 3 mmol/L}}
        reagents:
          ACID: {dissolved: {chloride: 2 mol/L}, temperature: 20 C, store: 500 L}
          CAUSTIC: {dissolved: {sodium: 2 mol/L}, temperature: 20 C, store: 500 L}
          AID: {filter_aid: 2.2 kg/L, temperature: 20 C, store: 500 L}
        """;

    private static RunningPlant Settler(string water) => RunningPlant.Start(RunningPlant.Model($$$"""
        {{{Waters}}}
        tanks:
          TK1:
            area: 2 m2
            overflow: 5 m3
            heel: 10 L
            starts: {volume: 4 m3, water: {{{water}}}}
            mixing: {agitator: AG1, power: 60 W, dead_time: 1 s, lag: 20 s, unmixed_lag: 1 h}
            settling: {floc_density: 15 g/L, grain_density: 3 kg/L, floc_size: 0.4 mm, bed_density: 20 g/L, holds: {iron: 106.87 g/mol}}
          TK2: {area: 2 m2, overflow: 5 m3, heel: 10 L, starts: {volume: 20 L, water: clean}, mixing: {dead_time: 1 s, lag: 20 s}}
        pumps: {P1: {starts_in: 50 ms}, P3: {starts_in: 50 ms}, P4: {starts_in: 50 ms}}
        agitators: {AG1: {starts_in: 1 s}}
        lines:
          decant: {from: TK1, to: TK2, rate: 8 m3/h, through: [P1], draws_below: 150 mm}
          souring: {from: ACID, to: TK1, rate: 300 L/h, through: [P3]}
          dosing: {from: CAUSTIC, to: TK1, rate: 300 L/h, through: [P4]}
        transmitters:
          AT1: {measures: turbidity, in: decant, per_suspended: 1000 NTU per g/L, low: 0 NTU, high: 500 NTU}
        """));

    [Fact]
    public void Dissolved_metal_does_not_settle_and_leaves_with_clear_water()
    {
        RunningPlant tank = Settler("acid");
        tank.Command(true, "AG1");
        tank.Run(900.0);
        tank.Command(false, "AG1");
        tank.Run(3600.0);
        Assert.Equal(0.0, tank.Reading("AT1"), 1e-9);
        Assert.Equal(0.0, tank.Quantity("TK1.bed"), 1e-9);
        tank.Command(true, "P1");
        tank.Run(600.0);
        Assert.Equal(1.5 * (1.0 - (20.0 / (1e3 * tank.Quantity("TK2.volume")))), tank.Quantity("TK2.iron"), 1e-6);
        Assert.Equal(0.0, tank.Plant.Ledger().Tanks[0].SolidKilograms, 1e-9);
        Assert.InRange(Math.Abs(tank.Balances().Substance), 0.0, 1e-9);
    }

    /// <summary>Stirred water is as turbid as the equilibrium has solids in it, from sour to neutral, at every moment that is looked at.</summary>
    [Fact]
    public void Turbidity_follows_what_the_equilibrium_has_as_a_solid()
    {
        RunningPlant tank = Settler("acid");
        tank.Command(true, "AG1", "P4");
        int partly = 0;
        for (int look = 0; look < 60; look++)
        {
            tank.Run(10.0);
            double solid = tank.Quantity("TK1.precipitate");
            Assert.Equal(solid, tank.Reading("AT1"), 2.0);
            partly += solid is > 5.0 and < 155.0 ? 1 : 0;
        }

        Assert.True(partly > 5, $"{partly}");
        Assert.Equal(1e3 * Grams, tank.Reading("AT1"), 3.0);
    }

    /// <summary>Neutralised, flocculated, soured and neutralised again: flocs go with their solids and grow anew.</summary>
    [Fact]
    public void Flocs_go_where_their_solids_dissolve()
    {
        RunningPlant tank = Settler("neutral");
        tank.Command(true, "AG1");
        tank.Run(1800.0);
        double size = tank.Quantity("TK1.floc_size");
        double dispersed = tank.Quantity("TK1.dispersed");
        Assert.InRange(size, 0.2, 0.3);
        tank.Command(true, "P3");
        Assert.True(tank.RunUntil(() => tank.Quantity("TK1.pH") < 1.9, 3600.0));
        tank.Command(false, "P3");
        tank.Run(300.0);
        Assert.Equal(0.0, tank.Reading("AT1"), 0.1);
        Assert.True(tank.Quantity("TK1.floc_size") < 0.01, $"{tank.Quantity("TK1.floc_size")} mm");
        tank.Command(true, "P4");
        Assert.True(tank.RunUntil(() => tank.Quantity("TK1.pH") > 7.0, 3600.0));
        tank.Command(false, "P4");
        Assert.True(tank.Quantity("TK1.dispersed") > 2.0 * dispersed);
        tank.Run(2400.0);
        Assert.Equal(size, tank.Quantity("TK1.floc_size"), 0.03 * size);
        Assert.Equal(dispersed, tank.Quantity("TK1.dispersed"), 0.1 * dispersed);
        Assert.InRange(Math.Abs(tank.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(tank.Balances().Volume), 0.0, 1e-9);
    }

    [Theory]
    [InlineData("acid", 0.0, 1e-6, 1.5, 2e-3)]
    [InlineData("neutral", 1.0, 0.02, 0.0, 0.03)]
    public void A_press_holds_what_is_solid(string water, double heldShare, double heldWithin, double passes, double passesWithin)
    {
        RunningPlant press = RunningPlant.Start(RunningPlant.Model($$$"""
            {{{Waters}}}
            tanks:
              TK1: {area: 4 m2, overflow: 12 m3, heel: 10 L, starts: {volume: 8 m3, water: {{{water}}} }, mixing: {dead_time: 0 s, lag: 1 s}}
              TK2: {area: 4 m2, overflow: 90 m3, heel: 1 L, starts: {volume: 2 L, water: clean}, mixing: {dead_time: 0 s, lag: 1 s}}
            pumps: {P1: {starts_in: 50 ms}, M1: {starts_in: 5 s}}
            presses:
              FP1:
                from: TK1
                filtrate_to: TK2
                opened_by: M1
                area: 4 m2
                chambers: 60 L
                feed: {through: [P1], rate: 2 m3/h, stalls_at: 7 bar}
                cloth: {resistance: 5e10 1/m, holds_back: 98 %, closes_at: 0.5 mm}
                cake: {resistance: 1.2e10 m/kg, compressibility: 0.5, dry_density: 250 g/L, holds: {iron: 106.87 g/mol}}
            """));
        press.Command(true, "P1");
        press.Run(3600.0);
        double filtrate = press.Total("FP1.filtered");
        Assert.True(filtrate > 500.0, $"{filtrate} L");
        double inChambers = 60.0 * Grams * 1e-3;
        Assert.Equal((heldShare * filtrate * Grams * 1e-3) + inChambers, press.Quantity("FP1.cake"), (heldWithin * filtrate * Grams * 1e-3) + (0.01 * inChambers));
        Assert.Equal(passes, press.Quantity("TK2.iron") * (1.0 + (2.0 / filtrate)), passesWithin);
        Assert.InRange(Math.Abs(press.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(press.Balances().Volume), 0.0, 1e-9);
    }

    /// <summary>Sour water that runs through a coated drum leaves no cake and brings its iron along; neutral water leaves nearly all of it.</summary>
    [Theory]
    [InlineData("acid", 0.0, 1e-3, 1.5)]
    [InlineData("neutral", 1.0, 0.02, 0.0)]
    public void A_drum_catches_what_is_solid(string water, double caughtShare, double within, double passes)
    {
        RunningPlant drum = RunningPlant.Start(RunningPlant.Model(DrumTests.Text
            .Replace(DrumTests.Text[..DrumTests.Text.IndexOf("tanks:", StringComparison.Ordinal)], $"{Waters}\n", StringComparison.Ordinal)
            .Replace("water: mains", "water: clean", StringComparison.Ordinal)
            .Replace("from: dirty", $"from: {water}", StringComparison.Ordinal)
            .Replace("dry_density: 200 g/L}", "dry_density: 200 g/L, holds: {iron: 106.87 g/mol}}", StringComparison.Ordinal)));
        drum.Command(true, "M1", "VP1", "M3", "P2");
        drum.Run(20.0);
        drum.Command(false, "M3");
        drum.Run(900.0);
        drum.Command(false, "P2");
        drum.Run(600.0);
        double before = Brought();
        drum.Command(true, "P1");
        drum.Run(900.0);
        double brought = Brought() - before;
        Assert.True(brought > 0.1, $"{brought} kg");
        double inWater = 1e-6 * 106.87 * ((1e3 * drum.Quantity("TROUGH.volume") * drum.Quantity("TROUGH.iron")) + (1e3 * drum.Quantity("RECEIVER.volume") * drum.Quantity("RECEIVER.iron")));
        double cake = drum.Quantity("F1.cake") * 2.0 * 1e-3;
        Assert.Equal(brought, inWater + cake, 1e-3 * brought);
        Assert.Equal(caughtShare * (brought - TroughKilograms()), cake, within * brought);
        Assert.True(passes == 0.0 || drum.Quantity("RECEIVER.iron") > 0.1);
        Assert.InRange(Math.Abs(drum.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(drum.Balances().Volume), 0.0, 1e-9);

        double Brought() => drum.Plant.Ledger().Lines.Single(line => line.Name == "feed").Litres * Grams * 1e-3;
        double TroughKilograms() => 1e-6 * 106.87 * 1e3 * drum.Quantity("TROUGH.volume") * drum.Quantity("TROUGH.iron");
    }
}
