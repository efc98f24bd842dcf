using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Tests.Words;

public sealed class ValueWordsTests
{
    [Theory]
    [InlineData(0.0, "0 mm")]
    [InlineData(6.351e-59, "0 mm")]
    [InlineData(-1e-30, "0 mm")]
    [InlineData(8.4567e-7, "8.457e-7 mm")]
    [InlineData(-8.4567e-7, "-8.457e-7 mm")]
    [InlineData(0.0012345, "0.001235 mm")]
    [InlineData(1234.5, "1235 mm")]
    [InlineData(99999.6, "100000 mm")]
    [InlineData(double.NaN, "no value")]
    [InlineData(double.PositiveInfinity, "no value")]
    public void Four_significant_figures(double value, string words) => Assert.Equal(words, ValueWords.Significant(value, 4, "mm"));
}
