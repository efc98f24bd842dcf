using Sequencer.Control.Execution;
using Sequencer.Control.Signals;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.Signals;

/// <summary>The same channel in whole microamperes.</summary>
public sealed class LoopCurrentTests
{
    /// <summary>A double that stands for half a step may lie on either side of it: there, and there only, the two may differ by one.</summary>
    [Theory]
    [InlineData(0, 500)]
    [InlineData(-500, 1000)]
    [InlineData(0, 1400)]
    [InlineData(7, 8)]
    [InlineData(0, 100_000)]
    public void Every_current_of_a_word_reads_as_the_channel_of_the_plant_does(long low, long high)
    {
        IntegerRange range = new(low, high);
        for (long count = short.MinValue; count <= short.MaxValue; count++)
        {
            AnalogueScaling channel = new(range);
            channel.Read(count / 1000.0);
            long reading = LoopCurrent.Reading(count, range);
            bool isHalf = ((2 * (count - LoopCurrent.RangeStart) * (high - low)) + 16_000) % 32_000 == 0;
            Assert.InRange(Math.Abs(reading - channel.Value), 0, isHalf ? 1 : 0);
        }
    }

    [Fact]
    public void Every_current_of_a_word_fails_as_the_channel_of_the_plant_does()
    {
        foreach (bool before in new[] { false, true })
        {
            for (long count = short.MinValue; count <= short.MaxValue; count++)
            {
                AnalogueScaling channel = new(new IntegerRange(0, 10));
                channel.Read(before ? 0 : 12);
                channel.Read(count / 1000.0);
                Assert.Equal(channel.Fault, LoopCurrent.HasFailed(count, before));
            }
        }
    }

    /// <summary>The nearest microampere, by exact fractions; half a microampere upwards.</summary>
    [Theory]
    [InlineData(100, 600)]
    [InlineData(-3, 4)]
    [InlineData(0, 40_000)]
    public void A_set_value_gives_the_nearest_current(long low, long high)
    {
        IntegerRange range = new(low, high);
        ExpressionBuilder builder = new();
        Variable setting = new("setting", VariableRole.Input, 0, Sort.Integer, range);
        Interpreter trial = new(
            TransitionSystem.Create("loop", 1, [setting], [], [], [], [], [], []), [LoopCurrent.Of(builder, builder.Variable(setting), range)]);
        for (long value = low; value <= high; value++)
        {
            trial.Inputs[0] = value;
            trial.Step();
            decimal exact = 4_000m + ((value - low) * 16_000m / (high - low));
            Assert.Equal((long)Math.Floor(exact + 0.5m), trial.Observed[0]);
        }
    }
}
