using Sequencer.Plant.Filtration;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A drum filter in a plant, held against its own equations worked out by hand and against what must be so of any filter.</summary>
public sealed class DrumTests
{
    private const double Area = 2.0;
    private const double Submerged = 0.4;
    private const double Cloth = 5e9;
    /// <summary>m2; 1.5 darcy.</summary>
    private const double Permeability = 1.5 * 9.869233e-13;
    private const double TurnSeconds = 60.0;
    private const double PipesCarry = 5.0 / 3.6;

    /// <summary>2.414e-5 x 10^(247.8 / (293.15 - 140)) at 20 C; handbooks have 1.002e-3.</summary>
    private const double Viscosity = 1.0017e-3;

    /// <summary>The solids of the water are 5 g/L; a litre of grains brings 2.2 kg of filter aid.</summary>
    internal const string Text = """
        plant: 1
        name: Drum
        ambient: 20 C
        supplies:
          mains: {temperature: 20 C, pH: 7.5, balanced_by: chloride, dissolved: {carbonate: 2 mmol/L, sodium: 3 mmol/L}}
          dirty: {temperature: 20 C, pH: 7.5, balanced_by: chloride, dissolved: {carbonate: 2 mmol/L, sodium: 3 mmol/L}, suspended: 5 g/L}
        reagents:
          AID: {filter_aid: 2.2 kg/L, temperature: 20 C, store: 500 L}
        tanks:
          TROUGH: {area: 2 m2, overflow: 1.9 m3, heel: 10 L, starts: {volume: 1.5 m3, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
          RECEIVER: {area: 2 m2, overflow: 90 m3, heel: 1 L, starts: {volume: 10 L, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
          KNIFE: {area: 1 m2, overflow: 200 L, heel: 0.1 L, starts: {volume: 100 L, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
        pumps:
          M1: {starts_in: 1 s}
          VP1: {starts_in: 1 s}
          M2: {starts_in: 50 ms}
          M3: {starts_in: 50 ms}
          P1: {starts_in: 50 ms}
          P2: {starts_in: 50 ms}
        lines:
          feed: {from: dirty, to: TROUGH, rate: 4 m3/h, through: [P1]}
          back: {from: RECEIVER, to: TROUGH, rate: 4 m3/h, through: [P2]}
          powder: {from: AID, to: TROUGH, rate: 0.5 L/s, through: [M3]}
          forward: {from: KNIFE, to: cloth, rate: 1 L/s, through: [M2]}
        drums:
          F1:
            trough: TROUGH
            filtrate_to: RECEIVER
            turned_by: M1
            turn: 60 s
            area: 2 m2
            submerged: 40 %
            pipes_carry: 5 m3/h
            knife: KNIFE
            vacuum: {pump: VP1, deepest: -60 kPa, bare_cloth: -20 kPa, pulls_down_in: 5 s, holds_from: -10 kPa}
            cloth: {resistance: 5e9 1/m, holds_back: 60 %}
            coat: {permeability: 1.5 darcy, dry_density: 320 g/L, closes_at: 2 mm}
            cake: {resistance: 1e10 m/kg, compressibility: 0.5, dry_density: 200 g/L}
        transmitters:
          PT1: {measures: pressure, in: F1, low: -100 kPa, high: 0 kPa}
          FT1: {measures: flow, in: F1, low: 0 m3/h, high: 10 m3/h}
          AT1: {measures: turbidity, in: RECEIVER, per_suspended: 1000 NTU per g/L, low: 0 NTU, high: 5000 NTU}
        """;

    [Fact]
    public void Clean_water_runs_through_bare_cloth_as_Darcy_says()
    {
        RunningPlant drum = Turning();
        drum.Run(120.0);
        Assert.Equal(-20.0, drum.Quantity("F1.vacuum"), 1e-3);
        Assert.Equal(Through(Submerged * 20e3 / (Viscosity * Cloth)), drum.Quantity("F1.filtrate"), 1e-3);
        Assert.Equal(drum.Quantity("F1.filtrate"), drum.Reading("FT1"), 1e-6);
        Assert.Equal(-20.0, drum.Reading("PT1"), 1e-3);
    }

    /// <summary>10 L of grains, 22 kg, on 2.0 m2 at 320 kg/m3 are 34 mm; the vacuum follows from cloth and coat in series.</summary>
    [Fact]
    public void Filter_aid_lies_down_as_a_coat_and_shuts_the_cloth()
    {
        RunningPlant drum = Coated();
        double coat = drum.Quantity("F1.coat");
        Assert.InRange(coat, 33.5, 22_000.0 / 320.0 / Area);
        double coatResistance = coat * 1e-3 / Permeability;
        double share = Cloth / (Cloth + coatResistance);
        double vacuum = 60e3 / (1.0 + (2.0 * share));
        Assert.Equal(-vacuum * 1e-3, drum.Quantity("F1.vacuum"), 0.05);
        Assert.Equal(Through(Submerged * vacuum / (Viscosity * (Cloth + coatResistance))), drum.Quantity("F1.filtrate"), 0.02);
        Assert.InRange(Math.Abs(drum.Balances().Substance), 0.0, 1e-9);
    }

    /// <summary>
    /// With the knife in the cake each turn begins clean: the flow is that of a drum through cloth and coat, 5 kg/m3 of solids at
    /// 1e10 x p^0.5 m/kg.
    /// </summary>
    [Fact]
    public void With_the_knife_on_it_gives_what_the_equation_of_a_turning_drum_says()
    {
        RunningPlant drum = Coated();
        CutTo(drum, drum.Quantity("F1.coat") - 1.0);
        drum.Command(true, "P1");
        drum.Run(2.0 * 3600.0);
        double coat = drum.Quantity("F1.coat") * 1e-3;
        double pressure = -drum.Quantity("F1.vacuum") * 1e3;
        double solids = drum.Quantity("TROUGH.suspended");
        FilterCake cake = new(FilterCake.ResistanceUnder(pressure, 1e10, 0.5), solids);
        double flux = RotaryDrum.Flux(cake, Viscosity, Cloth + (coat / Permeability), pressure, Submerged, TurnSeconds);
        Assert.InRange(drum.Quantity("F1.filtrate") / Through(flux), 0.97, 1.01);
        Assert.True(drum.Quantity("F1.solids_taken") > 5.0);
        Assert.InRange(Math.Abs(drum.Balances().Substance), 0.0, 1e-9);
        Assert.InRange(Math.Abs(drum.Balances().Volume), 0.0, 1e-9);
    }

    /// <summary>
    /// A cake of 5 g/L at 1e10 x p^0.5 m/kg holds its water: 200 kg/m3 of grains of 2600 kg/m3 leave 0.923 of it to water, 4.62 kg for each kg; the coat behind
    /// it is as full, 0.855 for each 0.32 kg.
    /// </summary>
    [Fact]
    public void A_fine_cake_leaves_the_drum_as_wet_as_its_pores_are_full()
    {
        RunningPlant drum = Coated();
        CutTo(drum, drum.Quantity("F1.coat") - 1.0);
        drum.Run(1200.0);
        double aidBefore = drum.Quantity("F1.filter_aid_taken");
        double wetBefore = drum.Quantity("F1.wet_taken");
        drum.Command(true, "P1");
        drum.Run(3600.0);
        (double solids, double aid) = (drum.Quantity("F1.solids_taken"), drum.Quantity("F1.filter_aid_taken") - aidBefore);
        double full = (solids * ((1.0 / 0.2) - (1.0 / 2.6))) + (aid * ((1.0 / 0.32) - (1.0 / 2.2)));
        Assert.Equal(full, drum.Quantity("F1.wet_taken") - wetBefore - solids - aid, 0.03 * full);
        Assert.Equal(0.0, drum.Balances().Volume, 1e-9);
    }

    /// <summary>What a coat without cake loses to the knife has drained for the 36 s that a turn is out of the bath.</summary>
    [Fact]
    public void A_coat_without_cake_drains_before_it_is_cut()
    {
        RunningPlant drum = Coated();
        CutTo(drum, drum.Quantity("F1.coat") - 2.0);
        drum.Run(600.0);
        double coat = drum.Quantity("F1.coat") * 1e-3;
        double pressure = -drum.Quantity("F1.vacuum") * 1e3;
        double full = Dewatering.Saturation(Permeability, Dewatering.Porosity(320, 2200), coat, pressure, Viscosity, (1.0 - Submerged) * TurnSeconds);
        double water = full * ((1.0 / 0.32) - (1.0 / 2.2));
        Assert.InRange(full, 0.2, 0.7);
        Assert.Equal(100.0 * water / (1.0 + water), drum.Quantity("F1.moisture"), 1.0);
        Assert.Equal(drum.Quantity("F1.wet_taken") * (1.0 - (drum.Quantity("F1.moisture") / 100.0)), drum.Quantity("F1.filter_aid_taken") + drum.Quantity("F1.solids_taken"), 1e-9);
    }

    /// <summary>22 kg of filter aid at 320 kg/m3 take 69 L, which fall back when the vacuum goes: what is in the tanks has come back but for rounding.</summary>
    [Fact]
    public void Water_that_the_coat_holds_is_missing_from_the_tanks_until_it_falls()
    {
        RunningPlant drum = Turning();
        drum.Command(true, "M3");
        drum.Run(20.0);
        drum.Command(false, "M3");
        drum.Run(5.0);
        double before = Tanks() + (drum.Quantity("F1.coat") * 1e-3 * Area);
        drum.Command(true, "P2");
        drum.Run(3600.0);
        double held = before - Tanks();
        Assert.InRange(held, 0.6 * drum.Quantity("F1.coat") * 1e-3 * Area, drum.Quantity("F1.coat") * 1e-3 * Area);
        drum.Command(false, "VP1");
        drum.Run(1800.0);
        Assert.Equal(before, Tanks(), 0.005);
        Assert.Equal(0.0, drum.Balances().Volume, 1e-9);

        double Tanks() => drum.Quantity("TROUGH.volume") + drum.Quantity("RECEIVER.volume");
    }

    [Fact]
    public void With_the_knife_away_it_blinds()
    {
        RunningPlant drum = Coated();
        double clean = drum.Quantity("F1.filtrate");
        drum.Command(true, "P1");
        drum.Run(3600.0);
        double later = drum.Quantity("F1.filtrate");
        Assert.True(later < 0.3 * clean, $"{clean} and {later} m3/h");
        Assert.True(drum.Quantity("F1.cake") > 200.0, $"{drum.Quantity("F1.cake")} g/m2");
        Assert.Equal(0.0, drum.Quantity("F1.solids_taken"));
    }

    /// <summary>Of what stands out a turn takes all but 1/e, as the place of the drum at the knife goes round.</summary>
    [Fact]
    public void The_knife_takes_what_stands_out_beyond_it_and_no_more()
    {
        RunningPlant drum = Coated();
        double before = drum.Quantity("F1.coat");
        CutTo(drum, 20.0);
        double knife = drum.Quantity("KNIFE.level") * 1e3;
        double beyond = drum.Quantity("F1.coat") - knife;
        drum.Run(TurnSeconds);
        Assert.Equal(beyond / Math.E, drum.Quantity("F1.coat") - knife, 0.02 * beyond);
        drum.Run(20.0 * TurnSeconds);
        Assert.Equal(knife, drum.Quantity("F1.coat"), 0.01);
        Assert.Equal((before - knife) * 1e-3 * Area * 320.0, drum.Quantity("F1.filter_aid_taken"), 0.2);
    }

    [Fact]
    public void A_drum_that_stands_is_not_cut()
    {
        RunningPlant drum = Coated();
        drum.Command(false, "M1");
        drum.Run(5.0);
        double before = drum.Quantity("F1.coat");
        CutTo(drum, 10.0);
        drum.Run(600.0);
        Assert.Equal(before, drum.Quantity("F1.coat"), 0.05);
    }

    [Fact]
    public void Without_vacuum_the_coat_slides_back_into_the_trough()
    {
        RunningPlant drum = Coated();
        drum.Command(false, "VP1");
        drum.Run(900.0);
        Assert.InRange(drum.Quantity("F1.coat"), 0.0, 0.01);
        Assert.Equal(22.0, drum.Quantity("TROUGH.filter_aid") * drum.Quantity("TROUGH.volume"), 0.3);
        Assert.Equal(0.0, drum.Quantity("F1.filtrate"), 1e-6);
    }

    /// <summary>A coat of 34 mm lets exp(-17) of 40 % of the solids pass; bare cloth 40 %.</summary>
    [Fact]
    public void Solids_pass_the_cloth_and_not_the_coat()
    {
        RunningPlant bare = Turning();
        bare.Command(true, "P1");
        bare.Run(600.0);
        double passed = bare.Quantity("RECEIVER.suspended") * bare.Quantity("RECEIVER.volume") * 1e3;
        Assert.Equal(0.4, passed / (passed + (bare.Quantity("F1.cake") * Area)), 1e-4);
        Assert.Equal(1000.0 * bare.Quantity("RECEIVER.suspended"), bare.Reading("AT1"), 1.0);
        RunningPlant coated = Coated();
        coated.Command(true, "P1");
        double before = coated.Quantity("RECEIVER.suspended") * coated.Quantity("RECEIVER.volume");
        coated.Run(600.0);
        Assert.Equal(before, coated.Quantity("RECEIVER.suspended") * coated.Quantity("RECEIVER.volume"), 1e-5);
    }

    /// <summary>
    /// A hundredth of bare cloth beside 34 mm of coat: of what passes, the crack's share is its conductance over that of both, and bare cloth
    /// lets 40 % of its solids through. The vacuum is weaker for it.
    /// </summary>
    [Fact]
    public void Through_a_crack_solids_and_air_find_their_way()
    {
        RunningPlant drum = Coated();
        drum.Command(true, "P1");
        drum.Command(false, "P2");
        double sound = drum.Quantity("F1.vacuum");
        drum.Inject("F1.cracked");
        drum.Run(1.0);
        double coat = drum.Quantity("F1.coat") * 1e-3;
        double crack = 0.01 / Cloth;
        double both = (0.99 / (Cloth + (coat / Permeability))) + crack;
        double past = 0.4 * crack / both;
        (double passed, double held) = (Solids(), drum.Quantity("F1.cake") * Area);
        drum.Run(600.0);
        Assert.Equal(past, (Solids() - passed) / (Solids() - passed + (drum.Quantity("F1.cake") * Area) - held), 0.01 * past);
        Assert.Equal(-60.0 / (1.0 + (2.0 * Cloth * both)), drum.Quantity("F1.vacuum"), 0.05);
        Assert.True(drum.Quantity("F1.vacuum") > sound + 0.3, $"{sound} kPa");

        double Solids() => drum.Quantity("RECEIVER.suspended") * drum.Quantity("RECEIVER.volume") * 1e3;
    }

    /// <summary>The knife comes up to a coat of 22 kg and into it: nothing is taken before it touches, and never less than nothing, to ten milligrams, however the steps lie (a step over that moment was two grams off).</summary>
    [Fact]
    public void A_knife_takes_nothing_before_it_touches()
    {
        for (double rest = 0.0; rest < 60.0; rest += 5.7)
        {
            RunningPlant drum = Coated();
            drum.Run(rest);
            drum.Command(true, "M2");
            double coat = drum.Quantity("F1.coat");
            while (drum.Quantity("KNIFE.level") > (coat * 1e-3) - 0.002)
            {
                drum.Plant.Advance(RunningPlant.ScanSeconds);
                double taken = drum.Total("F1.filter_aid_taken");
                bool touches = drum.Quantity("KNIFE.level") < (coat * 1e-3) + 1e-6;
                Assert.InRange(taken, -0.01, touches ? 22_000.0 : 0.01);
            }

            Assert.True(drum.Total("F1.filter_aid_taken") > 1.0);
        }
    }

    private static RunningPlant Turning()
    {
        RunningPlant drum = RunningPlant.Start(RunningPlant.Model(Text));
        drum.Command(true, "M1", "VP1");
        return drum;
    }

    /// <summary>20 s of powder into the trough, and round through the drum until it is on.</summary>
    private static RunningPlant Coated()
    {
        RunningPlant drum = Turning();
        drum.Command(true, "M3");
        drum.Run(20.0);
        drum.Command(false, "M3");
        drum.Run(60.0);
        drum.Command(true, "P2");
        drum.Run(3.0 * 3600.0);
        return drum;
    }

    private static void CutTo(RunningPlant drum, double millimetres)
    {
        drum.Command(true, "M2");
        Assert.True(drum.RunUntil(() => drum.Quantity("KNIFE.level") <= millimetres * 1e-3, 200.0));
        drum.Command(false, "M2");
        drum.Run(0.2);
    }

    /// <summary>m3/h of a flux in m/s, behind pipes that take (Q / 5 m3/h)^2 of the vacuum.</summary>
    private static double Through(double flux)
    {
        double wanted = flux * Area * 1000.0;
        double ratio = wanted / PipesCarry;
        return 3.6 * 2.0 * wanted / (1.0 + Math.Sqrt(1.0 + (4.0 * ratio * ratio)));
    }
}
