using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Titration;

/// <summary>
/// The x, none of it negative, that makes |A x - b| least: the active-set method of Lawson and Hanson, Solving Least Squares Problems (1974), on the normal
/// equations with columns of length one.
/// </summary>
internal static class NonNegativeLeastSquares
{
    private const double Tolerance = 1e-10;

    /// <param name="columns">The columns of A, each as long as <paramref name="right"/>.</param>
    /// <param name="right">b.</param>
    public static double[] Solve(IReadOnlyList<double[]> columns, double[] right)
    {
        int count = columns.Count;
        double[] lengths = [.. columns.Select(column => Math.Sqrt(DenseSolver.Dot(column, column)))];
        double[][] scaled = [.. columns.Select((column, index) => Array.ConvertAll(column, entry => lengths[index] > 0 ? entry / lengths[index] : 0.0))];
        double[][] products = [.. scaled.Select(left => Array.ConvertAll(scaled, other => DenseSolver.Dot(left, other)))];
        double[] aims = Array.ConvertAll(scaled, column => DenseSolver.Dot(column, right));
        double least = Tolerance * aims.Max(Math.Abs);
        double[] found = new double[count];
        List<int> free = [];
        for (int round = 0; round < 3 * count; round++)
        {
            double[] slopes = [.. Enumerable.Range(0, count).Select(index => aims[index] - free.Sum(other => products[index][other] * found[other]))];
            int[] held = [.. Enumerable.Range(0, count).Except(free).Where(index => lengths[index] > 0 && slopes[index] > least)];
            if (held.Length == 0)
            {
                break;
            }

            free.Add(held.MaxBy(index => slopes[index]));
            Settle(free, products, aims, found);
        }

        return [.. found.Select((value, index) => lengths[index] > 0 ? value / lengths[index] : 0.0)];
    }

    /// <summary>The least squares of what is free, for as long as one of them has to be taken back to zero.</summary>
    private static void Settle(List<int> free, double[][] products, double[] aims, double[] found)
    {
        while (free.Count > 0)
        {
            double[] wanted = Unbounded(free, products, aims);
            double step = 1.0;
            for (int place = 0; place < free.Count; place++)
            {
                if (wanted[place] <= 0)
                {
                    step = Math.Min(step, found[free[place]] / (found[free[place]] - wanted[place]));
                }
            }

            for (int place = 0; place < free.Count; place++)
            {
                found[free[place]] += step * (wanted[place] - found[free[place]]);
            }

            if (step >= 1.0)
            {
                return;
            }

            double smallest = Tolerance * free.Max(index => found[index]);
            foreach (int index in free.Where(index => found[index] <= smallest).ToArray())
            {
                found[index] = 0;
                free.Remove(index);
            }
        }
    }

    private static double[] Unbounded(List<int> free, double[][] products, double[] aims)
    {
        double[] matrix = [.. free.SelectMany(row => free.Select(column => products[row][column]))];
        double[] right = [.. free.Select(index => aims[index])];
        DenseSolver.Factor(matrix, free.Count);
        DenseSolver.Substitute(matrix, right);
        return right;
    }
}
