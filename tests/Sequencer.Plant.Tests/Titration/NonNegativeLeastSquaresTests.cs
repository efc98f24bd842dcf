using CsCheck;
using Sequencer.Plant.Titration;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.Titration;

public sealed class NonNegativeLeastSquaresTests
{
    /// <summary>Where least squares themselves are not negative they are the answer: 2 and 3 by hand.</summary>
    [Fact]
    public void Without_a_bound_in_the_way_they_are_least_squares()
    {
        double[] found = NonNegativeLeastSquares.Solve([[1, 0, 1], [0, 1, 1]], [2, 3, 5]);
        Assert.Equal(2, found[0], 1e-9);
        Assert.Equal(3, found[1], 1e-9);
    }

    /// <summary>What would be negative is nothing, and the other makes up for it: by hand -1 and 3, then 1.</summary>
    [Fact]
    public void What_would_be_negative_is_nothing()
    {
        double[] found = NonNegativeLeastSquares.Solve([[1, 0], [1, 1]], [2, 3 - 3]);
        Assert.Equal(2, found[0], 1e-9);
        Assert.Equal(0, found[1], 1e-9);
    }

    /// <summary>The conditions of Karush, Kuhn and Tucker: no step that stays allowed makes the error less.</summary>
    [Fact]
    public void No_allowed_step_is_better() =>
        Gen.Double[-1, 1].Array[6].Array[1, 8].Select(Gen.Double[-1, 1].Array[6]).SampleRepeatably(
            (columns, right) =>
            {
                double[] found = NonNegativeLeastSquares.Solve(columns, right);
                double[] error = [.. right.Select((wanted, row) => wanted - columns.Select((column, index) => column[row] * found[index]).Sum())];
                return columns.Select((column, index) => (Slope: column.Zip(error, (entry, off) => entry * off).Sum(), Value: found[index]))
                    .All(one => one.Value >= 0 && one.Slope <= 1e-6 && (one.Value == 0 || Math.Abs(one.Slope) <= 1e-6));
            },
            iterations: 2_000);
}
