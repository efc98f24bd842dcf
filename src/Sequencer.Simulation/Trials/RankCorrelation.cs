namespace Sequencer.Simulation.Trials;

/// <summary>
/// Spearman's rank correlation (C. Spearman, American Journal of Psychology 15 (1904) 72): the correlation of the ranks, equal
/// values sharing the mean of theirs. It sees anything that only rises or only falls, straight or not.
/// </summary>
public static class RankCorrelation
{
    /// <summary>-1 to 1 over the pairs in which both are numbers; not a number where fewer than three are left or one never changes.</summary>
    public static double Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        int[] pairs = [.. Enumerable.Range(0, first.Count).Where(index => double.IsFinite(first[index]) && double.IsFinite(second[index]))];
        return pairs.Length < 3
            ? double.NaN
            : Pearson(Ranks([.. pairs.Select(index => first[index])]), Ranks([.. pairs.Select(index => second[index])]));
    }

    /// <summary>
    /// What independent values pass in one of twenty sets: 1.96 times the standard deviation 1 / sqrt(n - 1) of the coefficient
    /// (that variance: from memory, M. G. Kendall, Rank Correlation Methods).
    /// </summary>
    public static double Noticeable(int pairs) => pairs < 3 ? double.NaN : 1.96 / Math.Sqrt(pairs - 1);

    private static double[] Ranks(double[] values)
    {
        int[] order = [.. Enumerable.Range(0, values.Length).OrderBy(index => values[index])];
        double[] ranks = new double[values.Length];
        for (int from = 0; from < order.Length;)
        {
            int to = from;
            while (to + 1 < order.Length && values[order[to + 1]] == values[order[from]])
            {
                to++;
            }

            for (int index = from; index <= to; index++)
            {
                ranks[order[index]] = (from + to) / 2.0;
            }

            from = to + 1;
        }

        return ranks;
    }

    private static double Pearson(double[] first, double[] second)
    {
        double meanFirst = first.Average();
        double meanSecond = second.Average();
        double both = 0;
        double spreadFirst = 0;
        double spreadSecond = 0;
        for (int index = 0; index < first.Length; index++)
        {
            both += (first[index] - meanFirst) * (second[index] - meanSecond);
            spreadFirst += (first[index] - meanFirst) * (first[index] - meanFirst);
            spreadSecond += (second[index] - meanSecond) * (second[index] - meanSecond);
        }

        return spreadFirst == 0 || spreadSecond == 0 ? double.NaN : both / Math.Sqrt(spreadFirst * spreadSecond);
    }
}
