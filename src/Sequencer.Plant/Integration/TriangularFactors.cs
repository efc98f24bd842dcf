namespace Sequencer.Plant.Integration;

/// <summary>
/// A square matrix as the product of a lower and an upper triangle, rows exchanged for the largest pivot. Zeros cost nothing: most
/// of what a plant holds depends on little else.
/// </summary>
internal sealed class TriangularFactors(int size)
{
    private readonly double[][] _rows = [.. Enumerable.Range(0, size).Select(_ => new double[size])];
    private readonly int[] _order = new int[size];
    private readonly double[] _exchanged = new double[size];

    /// <summary>Row of the matrix to be factored; filled before <see cref="Factor"/>.</summary>
    public double[] Row(int row) => _rows[row];

    /// <summary>False where the matrix is singular or holds what is no number.</summary>
    public bool Factor()
    {
        for (int row = 0; row < size; row++)
        {
            _order[row] = row;
        }

        for (int column = 0; column < size; column++)
        {
            BringUpPivot(column);
            double[] upper = _rows[column];
            double pivot = upper[column];
            if (!double.IsFinite(pivot) || pivot == 0.0)
            {
                return false;
            }

            for (int row = column + 1; row < size; row++)
            {
                double[] lower = _rows[row];
                if (lower[column] == 0.0)
                {
                    continue;
                }

                double factor = lower[column] / pivot;
                lower[column] = factor;
                for (int item = column + 1; item < size; item++)
                {
                    lower[item] -= factor * upper[item];
                }
            }
        }

        return true;
    }

    /// <summary>The right side becomes the solution.</summary>
    public void Solve(Span<double> right)
    {
        for (int row = 0; row < size; row++)
        {
            double sum = right[_order[row]];
            double[] lower = _rows[row];
            for (int item = 0; item < row; item++)
            {
                sum -= lower[item] * _exchanged[item];
            }

            _exchanged[row] = sum;
        }

        for (int row = size - 1; row >= 0; row--)
        {
            double sum = _exchanged[row];
            double[] upper = _rows[row];
            for (int item = row + 1; item < size; item++)
            {
                sum -= upper[item] * right[item];
            }

            right[row] = sum / upper[row];
        }
    }

    private void BringUpPivot(int column)
    {
        int best = column;
        for (int row = column + 1; row < size; row++)
        {
            best = Math.Abs(_rows[row][column]) > Math.Abs(_rows[best][column]) ? row : best;
        }

        (_rows[column], _rows[best]) = (_rows[best], _rows[column]);
        (_order[column], _order[best]) = (_order[best], _order[column]);
    }
}
