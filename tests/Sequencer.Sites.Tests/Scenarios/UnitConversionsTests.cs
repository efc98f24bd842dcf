using Sequencer.Sites.Scenarios;

namespace Sequencer.Sites.Tests.Scenarios;

public sealed class UnitConversionsTests
{
    [Theory]
    [InlineData("4500", "L", "m3", "4.5")]
    [InlineData("4.5", "m3", "L", "4500")]
    [InlineData("2", "h", "min", "120")]
    [InlineData("90", "L/h", "L/min", "1.5")]
    [InlineData("40.0", "C", "degC", "40.0")]
    [InlineData("0.60", "bar", "kPa", "60")]
    public void A_value_keeps_its_meaning_in_another_unit(string value, string from, string to, string expected) =>
        Assert.Equal(Number(expected), UnitConversions.Convert(Number(value), from, to));

    [Theory]
    [InlineData("L", "min")]
    [InlineData("L", "furlong")]
    [InlineData("furlong", "L")]
    [InlineData("", "L")]
    public void Units_that_do_not_fit_have_no_conversion(string from, string to) => Assert.Null(UnitConversions.Convert(1, from, to));

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
