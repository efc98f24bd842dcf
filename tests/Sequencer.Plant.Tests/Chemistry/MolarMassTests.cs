using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Tests.Chemistry;

public sealed class MolarMassTests
{
    [Theory]
    [InlineData("Xx2")]
    [InlineData("Ca(OH")]
    [InlineData("CaOH)2")]
    public void A_formula_that_cannot_be_read_is_refused(string formula) => Assert.Throws<FormatException>(() => MolarMass.Of(formula));
}
