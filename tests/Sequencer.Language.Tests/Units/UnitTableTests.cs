using Sequencer.Language.Units;

namespace Sequencer.Language.Tests.Units;

public sealed class UnitTableTests
{
    /// <summary>Pairs that are equal by definition of the SI and the units accepted with it.</summary>
    [Theory]
    [InlineData(1, "m3", 1000, "L")]
    [InlineData(1, "L", 1000, "mL")]
    [InlineData(60, "L/min", 1, "L/s")]
    [InlineData(36, "m3/h", 10, "L/s")]
    [InlineData(6, "m3/min", 100, "L/s")]
    [InlineData(3600, "L/h", 1000, "mL/s")]
    [InlineData(1, "h", 60, "min")]
    [InlineData(1, "s", 1000, "ms")]
    [InlineData(1, "m", 100, "cm")]
    [InlineData(1, "cm", 10, "mm")]
    [InlineData(1, "kg", 1000, "g")]
    [InlineData(1, "bar", 100, "kPa")]
    [InlineData(1, "mbar", 100, "Pa")]
    [InlineData(1, "V", 1000, "mV")]
    [InlineData(1, "g/L", 1000, "mg/L")]
    [InlineData(1, "mS/cm", 1000, "uS/cm")]
    public void Factors_agree_with_the_definitions(int left, string leftUnit, int right, string rightUnit)
    {
        Unit first = Assert.IsType<Unit>(UnitTable.Find(leftUnit));
        Unit second = Assert.IsType<Unit>(UnitTable.Find(rightUnit));
        Assert.Equal(first.Dimension, second.Dimension);
        Assert.Equal(first.Factor * left, second.Factor * right);
    }

    [Fact]
    public void Every_dimension_has_a_unit_and_every_symbol_is_unique()
    {
        Assert.All(Enum.GetValues<Dimension>(), dimension => Assert.NotEmpty(UnitTable.Of(dimension)));
        Assert.Equal(UnitTable.All.Length, UnitTable.All.Select(unit => unit.Symbol).Distinct(StringComparer.Ordinal).Count());
    }
}
