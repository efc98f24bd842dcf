using System.Collections.Immutable;
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
        (PlantParts parts, PlantMotion motion, SwitchTurns turns) = Start(High(litres));
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
        ImmutableArray<double> levels = [700.0, 40.0, 333.0, 41.0];
        (PlantParts parts, PlantMotion motion, SwitchTurns turns) = Start([.. levels.Select(High)]);
        parts.Drive("P1").Command(0.0, true);
        motion.Interrupt();
        foreach (double litres in levels.Order())
        {
            double expected = ((litres - FirstLitres) / FillLitresPerSecond) + StartsLate;
            motion.AdvanceTo(expected + Exactly);
            Assert.InRange(turns.Next, expected - Exactly, expected + Exactly);
            turns.Advance(expected + Exactly);
        }

        Assert.True(motion.Steps < 30, $"{motion.Steps} steps are not long");
    }

    /// <summary>
    /// A pump that takes a minute to start draws twice what comes: the volume rises by 33 L in half a minute and is back where it was after a whole one. Looked at
    /// before and after, it has never been there.
    /// </summary>
    [Theory]
    [InlineData(100.0, true)]
    [InlineData(0.5, false)]
    public void What_passes_a_threshold_and_comes_back_unseen_turns_a_switch_all_the_same(double hysteresis, bool staysMade)
    {
        RunningPlant plant = RunningPlant.Start(WithSlowPump(new SwitchDescription("LSH2", Measured.Volume, "TK1", ActsAbove: true, 320.0, hysteresis, NormallyClosed: false)));
        plant.Command(true, "P1");
        Assert.True(plant.RunUntil(() => plant.Quantity("TK1.volume") >= 0.3, 200.0));
        Assert.False(plant.Contact("LSH2"));
        plant.Command(true, "P4");
        plant.Plant.Advance(60.0);
        Assert.InRange(plant.Quantity("TK1.volume"), 0.299, 0.302);
        Assert.Equal(staysMade, plant.Contact("LSH2"));
    }

    [Fact]
    public void A_turn_that_was_found_beyond_a_command_never_comes()
    {
        (PlantParts parts, PlantMotion motion, SwitchTurns turns) = Start(High(300.0));
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

    private static (PlantParts Parts, PlantMotion Motion, SwitchTurns Turns) Start(params SwitchDescription[] switches)
    {
        PlantParts parts = new(PlainTank.Model());
        PlantMotion motion = new(parts);
        Moment looked = new(parts.InitialState());
        MeasuredValues values = new(parts, motion, [], looked);
        return (parts, motion, new SwitchTurns(motion, [.. switches.Select(described => new ThresholdSwitch(described))], [.. switches.Select(values.Of)], looked));
    }

    private static PlantModel WithSlowPump(SwitchDescription described)
    {
        PlantModel model = PlainTank.Model();
        return model with
        {
            Drives = [.. model.Drives.Select(drive => drive.Tag == "P4" ? drive with { TravelSeconds = 60.0 } : drive)],
            Switches = [.. model.Switches, described],
        };
    }
}
