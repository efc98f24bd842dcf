using Sequencer.Plant.Description;
using Sequencer.Plant.Instruments;
using Sequencer.Plant.Reaction;
using Sequencer.Plant.Tests.Runs;

namespace Sequencer.Plant.Tests.Instruments;

/// <summary>When switches turn is found within the steps of the equations, however long these are.</summary>
public sealed class SwitchTurnTests
{
    private const double FillLitresPerSecond = 8.0 / 3.6;
    private const double FirstLitres = 2.0;

    /// <summary>s; P1 is there in twice as much, evenly: as if it had stood so long and then run at once.</summary>
    private const double StartsLate = 0.025;

    /// <summary>s; the equations keep volumes to a millionth in each step.</summary>
    private const double Exactly = 1e-4;

    [Theory]
    [InlineData(3.0)]
    [InlineData(57.31)]
    [InlineData(498.0)]
    [InlineData(1234.5)]
    public void A_level_switch_turns_at_the_moment_at_which_its_level_is_reached(double litres)
    {
        (PlantParts parts, PlantMotion motion, SwitchTurns turns, _) = Start(High(litres));
        double expected = ((litres - FirstLitres) / FillLitresPerSecond) + StartsLate;
        Assert.Equal(double.PositiveInfinity, turns.Next);
        parts.Drive("P1").Command(0.0, true);
        motion.Interrupt();
        motion.AdvanceTo(expected);
        Assert.InRange(turns.Next, expected - Exactly, expected + Exactly);
    }

    [Fact]
    public void Turns_come_in_the_order_of_their_times_and_each_at_its_own()
    {
        double[] levels = [700.0, 40.0, 333.0, 41.0];
        (PlantParts parts, PlantMotion motion, SwitchTurns turns, ThresholdSwitch[] switches) = Start([.. levels.Select(High)]);
        parts.Drive("P1").Command(0.0, true);
        motion.Interrupt();
        foreach (double litres in levels.Order())
        {
            double expected = ((litres - FirstLitres) / FillLitresPerSecond) + StartsLate;
            motion.AdvanceTo(expected + Exactly);
            Assert.InRange(turns.Next, expected - Exactly, expected + Exactly);
            turns.Advance(expected + Exactly);
            Assert.Equal(levels.Select(level => level <= litres), switches.Select(one => one.IsActing));
        }

        Assert.True(motion.Steps < 30, $"{motion.Steps} steps are not long");
    }

    /// <summary>
    /// P4 takes a minute to start, while 2.222 L come in a second: volumes rise by 2.222 t - draw t^2 / 120 and come back. Looked at before and after, and at quarters of the
    /// step, which all lie beyond, the volume has never been there. It is past the threshold for 10.8 s, 0.76 s and 0.12 s.
    /// </summary>
    [Theory]
    [InlineData(64.0, 4.0, 15.0)]
    [InlineData(200.0, 2.6, 4.8)]
    [InlineData(320.0, 1.664, 3.0)]
    public void What_passes_a_threshold_and_comes_back_turns_a_switch_all_the_same(double cubicMetresPerHour, double aboveLitres, double backAfter)
    {
        foreach ((double hysteresis, bool staysMade) in new[] { (100.0, true), (0.3, false) })
        {
            SwitchDescription described = new("LSH2", Measured.Volume, "TK1", ActsAbove: true, 1000.0 + aboveLitres, hysteresis, NormallyClosed: false);
            RunningPlant plant = RunningPlant.Start(WithSlowPump(described, cubicMetresPerHour / 3.6));
            plant.Command(true, "P1");
            Assert.True(plant.RunUntil(() => plant.Quantity("TK1.volume") >= 1.0, 600.0));
            double before = plant.Quantity("TK1.volume");
            Assert.InRange(before, 1.0, 1.0003);
            Assert.False(plant.Contact("LSH2"));
            long changes = plant.Plant.ContactChanges;
            plant.Command(true, "P4");
            plant.Plant.Advance(backAfter);
            Assert.InRange(plant.Quantity("TK1.volume"), before - 0.001, before + 0.001);
            Assert.Equal(staysMade, plant.Contact("LSH2"));
            Assert.Equal(staysMade ? 1 : 2, plant.Plant.ContactChanges - changes);
        }
    }

    /// <summary>With no hysteresis either way of the threshold is one side; a value that stands on it does not turn a switch to and fro.</summary>
    [Fact]
    public void A_value_on_the_threshold_turns_a_switch_once()
    {
        SwitchDescription low = new("LSL2", Measured.Volume, "TK1", ActsAbove: false, FirstLitres, 0.0, NormallyClosed: false);
        PlantModel model = PlainTank.Model();
        RunningPlant plant = RunningPlant.Start(model with { Switches = [.. model.Switches, low] });
        Assert.True(plant.Contact("LSL2"));
        long changes = plant.Plant.ContactChanges;
        plant.Run(600.0);
        Assert.True(plant.Contact("LSL2"));
        Assert.Equal(changes, plant.Plant.ContactChanges);
    }

    /// <summary>From the first leak on the state is longer, and the equations begin anew. Some 0.1 L/s go through the hole, so that the level comes seconds later.</summary>
    [Fact]
    public void A_leak_puts_off_what_was_found_before_it()
    {
        RunningPlant tight = RunningPlant.Start(WithSlowPump(High(900.0), 0.0));
        RunningPlant leaking = RunningPlant.Start(WithSlowPump(High(900.0), 0.0));
        tight.Command(true, "P1");
        leaking.Command(true, "P1");
        tight.Run(300.0);
        leaking.Run(300.0);
        leaking.Inject("TK1.leaks");
        tight.Run(106.0);
        leaking.Run(106.0);
        Assert.True(tight.Contact("LSH900"));
        Assert.False(leaking.Contact("LSH900"));
        Assert.True(leaking.Quantity("TK1.volume") < 0.9);
        leaking.Clear("TK1.leaks");
        Assert.False(leaking.Contact("LSH900"));
        Assert.True(leaking.RunUntil(() => leaking.Contact("LSH900"), 100.0));
        Assert.InRange(leaking.Quantity("TK1.volume"), 0.9, 0.9 + (FillLitresPerSecond * RunningPlant.ScanSeconds / 1000.0));
    }

    [Fact]
    public void A_turn_that_was_found_beyond_a_command_never_comes()
    {
        (PlantParts parts, PlantMotion motion, SwitchTurns turns, _) = Start(High(300.0));
        parts.Drive("P1").Command(0.0, true);
        motion.Interrupt();
        double time = 0.0;
        for (; double.IsPositiveInfinity(turns.Next); time += 0.1)
        {
            motion.AdvanceTo(time);
            turns.Advance(time);
        }

        Assert.True(turns.Next > time + 1.0, "the step that finds it begins too late");
        parts.Drive("P1").Command(motion.Time, false);
        motion.Interrupt();
        motion.AdvanceTo(1000.0);
        Assert.Equal(double.PositiveInfinity, turns.Next);
        parts.Drive("P1").Command(1000.0, true);
        motion.Interrupt();
        motion.AdvanceTo(1000.0 + (300.0 / FillLitresPerSecond));
        Assert.InRange(turns.Next, 1000.0, 1000.0 + (300.0 / FillLitresPerSecond));
    }

    private static SwitchDescription High(double litres) => new(FormattableString.Invariant($"LSH{litres}"), Measured.Volume, "TK1", ActsAbove: true, litres, 1.0, NormallyClosed: false);

    private static (PlantParts Parts, PlantMotion Motion, SwitchTurns Turns, ThresholdSwitch[] Switches) Start(params SwitchDescription[] switches)
    {
        PlantParts parts = new(PlainTank.Model());
        PlantMotion motion = new(parts);
        Instant looked = new(parts.InitialState());
        MeasuredValues values = new(parts, motion, [], looked);
        ThresholdSwitch[] turned = [.. switches.Select(described => new ThresholdSwitch(described))];
        return (parts, motion, new SwitchTurns(motion, [.. turned], [.. switches.Select(values.Of)], looked), turned);
    }

    /// <summary>P4 draws so many L/s once it has started, a minute after it is told to.</summary>
    private static PlantModel WithSlowPump(SwitchDescription described, double litresPerSecond)
    {
        PlantModel model = PlainTank.Model();
        return model with
        {
            Drives = [.. model.Drives.Select(drive => drive.Tag == "P4" ? drive with { TravelSeconds = 60.0 } : drive)],
            Lines = [.. model.Lines.Select(line => line.Name == "empty" ? line with { RateLitresPerSecond = litresPerSecond } : line)],
            Switches = [.. model.Switches, described],
        };
    }
}
