using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class RampTests
{
    [Fact]
    public void It_moves_evenly_and_turns_round_where_it_is()
    {
        Ramp ramp = new(0.0, 100.0);
        ramp.MoveTo(10.0, 1.0, 4.0);
        Assert.Equal([0.0, 0.0, 0.5, 1.0, 1.0], new[] { 0.0, 10.0, 12.0, 14.0, 99.0 }.Select(ramp.Value));
        ramp.MoveTo(12.0, 0.0, 4.0);
        Assert.Equal([0.25, 0.5, 0.25, 0.0], new[] { 11.0, 12.0, 13.0, 14.0 }.Select(ramp.Value));
    }

    [Fact]
    public void Its_kinks_are_where_it_starts_and_stops()
    {
        Ramp ramp = new(0.0, 100.0);
        Assert.Equal(double.PositiveInfinity, ramp.NextKink(0.0));
        ramp.MoveTo(10.0, 1.0, 4.0);
        Assert.Equal([10.0, 14.0, double.PositiveInfinity], new[] { 5.0, 10.0, 14.0 }.Select(ramp.NextKink));
    }

    [Fact]
    public void Its_past_is_kept_as_long_as_it_was_asked_to()
    {
        Ramp ramp = new(0.0, 20.0);
        for (int turn = 0; turn < 1000; turn++)
        {
            ramp.MoveTo(turn * 10.0, turn % 2 == 0 ? 1.0 : 0.0, 1.0);
            Assert.Equal(turn % 2 == 0 ? 1.0 : 0.0, ramp.Value((turn * 10.0) + 5.0));
            Assert.Equal(turn % 2, ramp.Value((turn * 10.0) - 5.0));
        }
    }
}
