using Sequencer.Plant.Chemistry;

namespace Sequencer.Plant.Tests.Chemistry;

/// <summary>Rates; their constants here are examples, not data.</summary>
public sealed class SolidKineticsTests
{
    [Theory]
    [InlineData(0, 0.02)]
    [InlineData(0.125, 0.01)]
    [InlineData(1, 0)]
    [InlineData(8, 0)]
    public void Lime_dissolves_more_slowly_towards_saturation(double saturationRatio, double expected) =>
        Assert.Equal(expected, SolidKinetics.Dissolution(0.01, 2, saturationRatio, 3), 1e-12);

    [Fact]
    public void Lime_that_is_used_up_dissolves_no_more() => Assert.Equal(0, SolidKinetics.Dissolution(0.01, -1e-9, 0, 3));

    /// <summary>Milk of lime in water, by Euler steps of a second: it ends at the solubility that equilibrium gives.</summary>
    [Fact]
    public void Lime_dissolving_in_water_comes_to_saturation()
    {
        WaterBatch water = new(Tables.Minteq);
        double solid = 0.05;
        for (int second = 0; second < 2000; second++)
        {
            water.With("Ca+2", 0.05 - solid).Ph();
            solid -= SolidKinetics.Dissolution(0.02, solid, water.Solver.SaturationRatio(Tables.Minteq.SolidIndex("Portlandite")), 3);
        }

        WaterBatch saturated = new WaterBatch(Tables.Minteq).With("Ca+2", 0.05).Allow("Portlandite");
        saturated.Ph();
        Assert.Equal(saturated.SolidAmount("Portlandite"), solid, 1e-6);
    }

    [Fact]
    public void A_solid_approaches_equilibrium_from_either_side()
    {
        Assert.Equal(0.03, SolidKinetics.Approach(0.1, 0.5, 0.2), 1e-12);
        Assert.Equal(-0.03, SolidKinetics.Approach(0.1, 0.2, 0.5), 1e-12);
    }
}
