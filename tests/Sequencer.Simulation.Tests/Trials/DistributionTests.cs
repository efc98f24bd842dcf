using Sequencer.Simulation.Trials;

namespace Sequencer.Simulation.Tests.Trials;

public sealed class DistributionTests
{
    [Fact]
    public void Shares_lie_on_a_straight_line_between_neighbours()
    {
        Distribution spread = new([40, 10, double.NaN, 30, 20, 50]);
        Assert.Equal((5, 1, 10.0, 30.0, 50.0), (spread.Count, spread.Without, spread.Lowest, spread.Median, spread.Highest));
        Assert.Equal(12, spread.At(0.05), 12);
        Assert.Equal(48, spread.At(0.95), 12);
    }

    [Fact]
    public void Without_a_value_there_is_no_share() => Assert.Equal(double.NaN, new Distribution([double.NaN]).Median);
}
