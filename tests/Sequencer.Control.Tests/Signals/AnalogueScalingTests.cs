using CsCheck;
using Sequencer.Control.Signals;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.Signals;

public sealed class AnalogueScalingTests
{
    [Theory]
    [InlineData(4.0, 0)]
    [InlineData(20.0, 1400)]
    [InlineData(12.0, 700)]
    [InlineData(3.9, 0)]
    [InlineData(20.4, 1400)]
    [InlineData(0.0, 0)]
    [InlineData(25.0, 1400)]
    [InlineData(4.0057, 0)]
    [InlineData(4.0058, 1)]
    [InlineData(double.NaN, 0)]
    [InlineData(double.PositiveInfinity, 1400)]
    [InlineData(double.NegativeInfinity, 0)]
    public void A_current_becomes_the_nearest_step_of_the_range(double milliamps, long expected)
    {
        AnalogueScaling channel = new(new IntegerRange(0, 1400));
        channel.Read(milliamps);
        Assert.Equal(expected, channel.Value);
    }

    [Theory]
    [InlineData(3.6, true)]
    [InlineData(3.8, false)]
    [InlineData(20.5, false)]
    [InlineData(21.0, true)]
    [InlineData(0.0, true)]
    [InlineData(double.NaN, true)]
    public void Quality_is_certain_at_the_edges_of_the_bands(double milliamps, bool fault)
    {
        foreach (double before in (double[])[12.0, 0.0])
        {
            AnalogueScaling channel = new(new IntegerRange(-100, 100));
            channel.Read(before);
            channel.Read(milliamps);
            Assert.Equal(fault, channel.Fault);
        }
    }

    [Theory]
    [InlineData(3.61)]
    [InlineData(3.79)]
    [InlineData(20.51)]
    [InlineData(20.99)]
    public void Between_the_bands_the_last_quality_is_kept(double milliamps)
    {
        AnalogueScaling channel = new(new IntegerRange(0, 10));
        channel.Read(12.0);
        channel.Read(milliamps);
        Assert.False(channel.Fault);
        channel.Read(0.0);
        channel.Read(milliamps);
        Assert.True(channel.Fault);
    }

    [Fact]
    public void A_channel_that_has_not_measured_is_failed_and_inside_its_range()
    {
        AnalogueScaling channel = new(new IntegerRange(100, 200));
        Assert.True(channel.Fault);
        Assert.Equal(100, channel.Value);
    }

    [Fact]
    public void Every_integer_of_a_range_is_reached_from_its_own_current() =>
        Gen.Select(Gen.Long[-100_000, 100_000], Gen.Long[1, 100_000], Gen.Double[0, 1]).SampleRepeatably((low, span, place) =>
        {
            long expected = low + (long)(place * span);
            AnalogueScaling channel = new(new IntegerRange(low, low + span));
            channel.Read(4.0 + (16.0 * (expected - low) / span));
            Assert.Equal(expected, channel.Value);
        }, iterations: 1000);
}
