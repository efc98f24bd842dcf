using Sequencer.Simulation.Trials;

namespace Sequencer.Simulation.Tests.Trials;

public sealed class RankCorrelationTests
{
    /// <summary>The worked example of Wikipedia, "Spearman's rank correlation coefficient": ten people, -29/165 (from memory, reckoned again by 1 - 6 x 194 / (10 x 99)).</summary>
    [Fact]
    public void The_worked_example_comes_out()
    {
        double[] first = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110];
        double[] second = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17];
        Assert.Equal(-29.0 / 165.0, RankCorrelation.Of(first, second), 12);
    }

    [Fact]
    public void What_only_rises_is_one_whatever_its_shape_and_what_is_no_number_is_left_out()
    {
        double[] first = [1, 2, 3, double.NaN, 5, 6];
        Assert.Equal(1, RankCorrelation.Of(first, [1, 10, 11, -500, 1e9, 1e10]), 12);
        Assert.Equal(-1, RankCorrelation.Of(first, [9, 8, 7, 100, 6, -1e9]), 12);
        Assert.Equal(double.NaN, RankCorrelation.Of(first, [4, 4, 4, 4, 4, 4]));
        Assert.Equal(double.NaN, RankCorrelation.Of([1, 2], [1, 2]));
    }

    /// <summary>Ranks of 10, 20, 20, 30 are 1, 2.5, 2.5, 4: with 1, 2, 3, 4 that is 4.5 / sqrt(4.5 x 5).</summary>
    [Fact]
    public void Equal_values_share_their_rank() => Assert.Equal(4.5 / Math.Sqrt(4.5 * 5.0), RankCorrelation.Of([10, 20, 20, 30], [1, 2, 3, 4]), 12);

    /// <summary>Of many sets of independent draws about one in twenty passes the bound; far more would call chance a cause.</summary>
    [Fact]
    public void Chance_passes_the_bound_in_about_one_of_twenty_sets()
    {
        const int sets = 2000;
        const int runs = 50;
        int passed = Enumerable.Range(0, sets).Count(set => Math.Abs(RankCorrelation.Of(Draws(2 * set), Draws((2 * set) + 1))) > RankCorrelation.Noticeable(runs));
        Assert.InRange(passed / (double)sets, 0.03, 0.07);

        static double[] Draws(int stream) => [.. Enumerable.Range(0, runs).Select(number => SeededDraws.Share(7, (ulong)stream, (ulong)number))];
    }
}
