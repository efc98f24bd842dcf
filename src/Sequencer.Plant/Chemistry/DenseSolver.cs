namespace Sequencer.Plant.Chemistry;

/// <summary>Linear algebra in place for systems of a dozen unknowns: no allocation, row-major arrays.</summary>
internal static class DenseSolver
{
    private const double SmallestRelativePivot = 1e-13;
    private const double SmallestPivot = 1e-290;

    /// <summary>Cholesky factor in place, lower triangle; a pivot lost to rounding is replaced by a small share of its diagonal.</summary>
    public static void Factor(double[] matrix, int count)
    {
        for (int column = 0; column < count; column++)
        {
            Span<double> pivotRow = matrix.AsSpan(column * count, column + 1);
            double diagonal = pivotRow[column];
            double pivot = diagonal - Dot(pivotRow[..column], pivotRow[..column]);
            double root = Math.Sqrt(Math.Max(pivot, Math.Max(SmallestRelativePivot * diagonal, SmallestPivot)));
            pivotRow[column] = root;
            for (int row = column + 1; row < count; row++)
            {
                Span<double> entries = matrix.AsSpan(row * count, column + 1);
                entries[column] = (entries[column] - Dot(entries[..column], pivotRow[..column])) / root;
            }
        }
    }

    public static void Substitute(double[] factor, Span<double> vector)
    {
        int count = vector.Length;
        for (int row = 0; row < count; row++)
        {
            vector[row] = (vector[row] - Dot(factor.AsSpan(row * count, row), vector[..row])) / factor[(row * count) + row];
        }

        for (int row = count - 1; row >= 0; row--)
        {
            double value = vector[row] / factor[(row * count) + row];
            vector[row] = value;
            for (int item = 0; item < row; item++)
            {
                vector[item] -= factor[(row * count) + item] * value;
            }
        }
    }

    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        double sum = 0;
        for (int item = 0; item < left.Length; item++)
        {
            sum += left[item] * right[item];
        }

        return sum;
    }

    /// <summary>
    /// Gaussian elimination with row exchange on the first <paramref name="size"/> rows of a matrix of <paramref name="width"/>
    /// columns; the right side becomes the solution. False if the matrix is singular.
    /// </summary>
    public static bool Eliminate(Span<double> matrix, Span<double> right, int size, int width)
    {
        for (int column = 0; column < size; column++)
        {
            BringUpPivot(matrix, right, column, size, width);
            double pivot = matrix[(column * width) + column];
            if (!double.IsFinite(pivot) || pivot == 0)
            {
                return false;
            }

            for (int row = column + 1; row < size; row++)
            {
                double factor = matrix[(row * width) + column] / pivot;
                for (int item = column; item < size; item++)
                {
                    matrix[(row * width) + item] -= factor * matrix[(column * width) + item];
                }

                right[row] -= factor * right[column];
            }
        }

        for (int row = size - 1; row >= 0; row--)
        {
            double sum = right[row];
            for (int item = row + 1; item < size; item++)
            {
                sum -= matrix[(row * width) + item] * right[item];
            }

            right[row] = sum / matrix[(row * width) + row];
        }

        return true;
    }

    /// <summary>Exchanges rows so that the column's largest remaining entry is on the diagonal.</summary>
    private static void BringUpPivot(Span<double> matrix, Span<double> right, int column, int size, int width)
    {
        int best = column;
        for (int row = column + 1; row < size; row++)
        {
            best = Math.Abs(matrix[(row * width) + column]) > Math.Abs(matrix[(best * width) + column]) ? row : best;
        }

        for (int item = 0; best != column && item < size; item++)
        {
            (matrix[(column * width) + item], matrix[(best * width) + item]) = (matrix[(best * width) + item], matrix[(column * width) + item]);
        }

        (right[column], right[best]) = (right[best], right[column]);
    }
}
