using CsCheck;
using Sequencer.Simulation.Trials;

namespace Sequencer.Simulation.Tests.Trials;

public sealed class SeededDrawsTests
{
    [Fact]
    public void An_order_has_each_place_once_and_depends_on_seed_and_stream() => Gen.Select(Gen.ULong, Gen.ULong, Gen.Int[1, 300]).Sample((seed, stream, count) =>
    {
        int[] order = SeededDraws.Order(seed, stream, count);
        Assert.Equal(Enumerable.Range(0, count), order.Order());
        Assert.Equal(order, SeededDraws.Order(seed, stream, count));
        if (count > 20)
        {
            Assert.NotEqual(order, SeededDraws.Order(seed + 1, stream, count));
            Assert.NotEqual(order, SeededDraws.Order(seed, stream + 1, count));
        }
    });

    /// <summary>Ten equal parts of 10,000 draws: chi squared of 9 degrees of freedom passes 27.9 in one of a thousand sets (Abramowitz and Stegun, table 26.8).</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(1, 2)]
    [InlineData(2, 1)]
    [InlineData(123456789, 100000)]
    public void Shares_are_spread_evenly(int seed, int stream)
    {
        const int draws = 10_000;
        double[] shares = [.. Enumerable.Range(0, draws).Select(number => SeededDraws.Share((ulong)seed, (ulong)stream, (ulong)number))];
        Assert.All(shares, share => Assert.InRange(share, 0, 1 - 1e-16));
        double each = draws / 10.0;
        double chi = Enumerable.Range(0, 10).Sum(part => Math.Pow(shares.Count(share => (int)(share * 10) == part) - each, 2) / each);
        Assert.InRange(chi, 0, 27.9);
    }
}
