using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>
/// A coat of filter aid of 1 darcy and 300 kg/m3, laid on a drum in a run and cut down to its heel under clean water at 60 kPa. The water has 20.07 C, at which the model's viscosity is 1 mPa s.
/// </summary>
public sealed class PrecoatRunTests
{
    private const double Area = 2.0;
    private const double Submerged = 0.4;

    /// <summary>mm of coat that are laid beyond what the run begins with.</summary>
    private const double Spare = 4.0;

    private static RunningPlant Drum(double thickness, double turnSeconds, double advance) => RunningPlant.Start(RunningPlant.Model(FormattableString.Invariant($$$"""
        plant: 1
        name: Precoat
        ambient: 20 C
        supplies:
          mains: {temperature: 20.07 C, pH: 7.5, balanced_by: chloride, dissolved: {sodium: 3 mmol/L}}
        reagents:
          AID: {filter_aid: 2.2 kg/L, temperature: 20.07 C, store: 500 L}
        tanks:
          TROUGH: {area: 2 m2, overflow: 3 m3, heel: 10 L, starts: {volume: 2 m3, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
          RECEIVER: {area: 2 m2, overflow: 3 m3, heel: 1 L, starts: {volume: 300 L, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
          KNIFE: {area: 1 m2, overflow: 200 L, heel: 0.1 L, starts: {volume: {{{thickness + (2.0 * Spare)}}} L, water: mains}, mixing: {dead_time: 0 s, lag: 1 s}}
        pumps: {M1: {starts_in: 1 s}, VP1: {starts_in: 1 s}, M2: {starts_in: 50 ms}, M3: {starts_in: 50 ms}, M4: {starts_in: 50 ms}, P2: {starts_in: 50 ms}}
        lines:
          back: {from: RECEIVER, to: TROUGH, rate: 100 m3/h, through: [P2], by_level: {shut_at: 300 L, open_at: 1000 L}}
          powder: {from: AID, to: TROUGH, rate: 0.5 L/s, through: [M3]}
          forward: {from: KNIFE, to: cloth, rate: {{{advance}}} L/h, through: [M2]}
          quickly: {from: KNIFE, to: cloth, rate: 10 L/h, through: [M4]}
        drums:
          F1:
            trough: TROUGH
            filtrate_to: RECEIVER
            turned_by: M1
            turn: {{{turnSeconds}}} s
            area: 2 m2
            submerged: 40 %
            pipes_carry: 10000 m3/h
            knife: KNIFE
            vacuum: {pump: VP1, deepest: -60 kPa, bare_cloth: -59.9 kPa, pulls_down_in: 5 s, holds_from: -10 kPa}
            cloth: {resistance: 1e6 1/m, holds_back: 99 %}
            coat: {permeability: 1 darcy, dry_density: 300 g/L, closes_at: 1 mm}
            cake: {resistance: 1e10 m/kg, compressibility: 0.5, dry_density: 200 g/L}
        """)));

    /// <summary>The coat laid down and cut to what the run begins with, and the knife on its way.</summary>
    private static RunningPlant Cut(double thickness, double perTurn, double turns)
    {
        double advance = perTurn * turns * 60.0;
        RunningPlant drum = Drum(thickness, 60.0 / turns, advance);
        drum.Command(true, "M1", "VP1", "M3");
        Wait(drum, (thickness + Spare) * 1e-3 * Area * 300.0 / 2.2 / 0.5, 0.1);
        drum.Command(false, "M3");
        drum.Command(true, "P2");
        double hours = 0.0;
        while (drum.Quantity("F1.coat") < thickness + (0.97 * Spare))
        {
            Wait(drum, 60.0, 60.0);
            hours += 1.0 / 60.0;
            Assert.True(hours < 48.0, $"{drum.Quantity("F1.coat")} mm");
        }

        drum.Command(true, "M4");
        while (drum.Quantity("KNIFE.level") > thickness * 1e-3)
        {
            Wait(drum, 0.1, 0.1);
        }

        drum.Command(false, "M4");
        Wait(drum, 12.0 * 60.0 / turns, 60.0);
        Assert.Equal(thickness, drum.Quantity("F1.coat"), 0.05);
        drum.Command(true, "M2");
        return drum;
    }

    private static double HoursTo(RunningPlant drum, double millimetres)
    {
        double hours = 0.0;
        while (drum.Quantity("F1.coat") > millimetres)
        {
            Wait(drum, 60.0, 60.0);
            hours += 1.0 / 60.0;
        }

        return hours;
    }

    private static void Wait(RunningPlant drum, double seconds, double scan)
    {
        for (double passed = 0.0; passed < seconds - 1e-9; passed += scan)
        {
            drum.Plant.Advance(scan);
        }

        Assert.Null(drum.Plant.Failure);
    }

    /// <summary>
    /// Hours until a coat is cut to its heel, (coat - heel) / (advance a turn x turns), in mm and turns a minute. The coat follows the knife by a turn. Computed from the geometry.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(100, 10, 0.10, 0.5, 30.0)]
    [InlineData(75, 10, 0.05, 1.0, 21.667)]
    [InlineData(50, 5, 0.25, 0.2, 15.0)]
    [InlineData(150, 10, 0.01, 2.0, 116.667)]
    public void A_coat_lasts_until_it_is_cut_to_its_heel(double thickness, double heel, double perTurn, double turns, double hours) =>
        Within(hours, HoursTo(Cut(thickness, perTurn, turns), heel), (0.001 * hours) + (1.5 / turns / 60.0));

    /// <summary>0.10 mm a turn at 0.5 turns a minute is 3.0 mm an hour and takes 0.90 kg/(m2 h) of a coat of 300 kg/m3. Computed from the geometry.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void The_knife_takes_filter_aid_with_it()
    {
        RunningPlant drum = Cut(100, 0.10, 0.5);
        Wait(drum, 3600.0, 60.0);
        double taken = drum.Quantity("F1.filter_aid_taken");
        double coat = drum.Quantity("F1.coat");
        Wait(drum, 5.0 * 3600.0, 60.0);
        Within(3.0, (coat - drum.Quantity("F1.coat")) / 5.0, 0.01);
        Within(0.90, (drum.Quantity("F1.filter_aid_taken") - taken) / 5.0 / Area, 0.005);
        Assert.Equal(0.0, drum.Balances().Substance, 1e-9);
    }

    /// <summary>
    /// Darcy's law for 1 darcy, 60 kPa, 1 mPa s: 2369 L/(m2 h) through 90 mm of what is under; and all that goes through while 90 mm are cut down to 10 at 3 mm an hour,
    /// 0.4 x 2369 x 90 / 3 x ln 9 = 62.5 m3 for each m2 of drum. Computed.
    /// </summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_clean_coat_lets_water_through()
    {
        RunningPlant drum = Cut(100, 0.10, 0.5);
        HoursTo(drum, 90.0);
        Within(2369.0, drum.Quantity("F1.filtrate") * 1e3 / Area / Submerged, 5.0);
        double before = drum.Total("F1.filtered");
        HoursTo(drum, 10.0);
        Within(62.5, (drum.Total("F1.filtered") - before) * 1e-3 / Area, 0.2);
    }
}
