using Sequencer.Plant.Filtration;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Filtration;

/// <summary>
/// Water left in a layer: our own equations, their constants remembered from Wakeman and Tarleton, worked out by hand (which shows no more than that they are written down right) for a coat of filter aid: 1.5 darcy, 320 kg/m3 of
/// grains of 2200 kg/m3, 50 mm, 60 kPa, 1 mPa s.
/// </summary>
public sealed class DewateringTests
{
    /// <summary>m2; 1.5 darcy.</summary>
    private const double Permeability = 1.5 * 9.869233e-13;

    private static readonly double Porosity = Dewatering.Porosity(320, 2200);

    [Fact]
    public void A_coat_is_mostly_pores() => Within(0.8545, Porosity, 0.0001);

    /// <summary>k = e^3 x^2/(180 (1 - e)^2) makes grains of 3.01 um; 4.6 x 0.1455 x 0.0728 / (0.8545 x 3.01e-6) = 18.9 kPa.</summary>
    [Fact]
    public void Air_finds_its_way_from_the_threshold_on()
    {
        double grain = Math.Sqrt(180.0 * Permeability) * (1.0 - Porosity) / Math.Pow(Porosity, 1.5);
        Within(3.01e-6, grain, 0.01e-6);
        Within(4.6 * (1.0 - Porosity) * Dewatering.SurfaceTension / (Porosity * grain), Dewatering.Threshold(Permeability, Porosity), 1e-6);
        Within(18.9e3, Dewatering.Threshold(Permeability, Porosity), 0.1e3);
        Assert.Equal(1.0, Dewatering.Saturation(Permeability, Porosity, 0.05, 18e3, 1e-3, 3600));
        Assert.True(Dewatering.Saturation(Permeability, Porosity, 0.05, 20e3, 1e-3, 3600) < 1.0);
    }

    /// <summary>N = 180 x 1.480e-12 x 60e3 / (0.05 x 0.0728) = 4.39e-3: 0.155 x (1 + 0.031 x 14.30) = 0.2237.</summary>
    [Fact]
    public void Some_water_stays_for_ever() => Within(0.2237, Dewatering.Residual(Permeability, 60e3, 0.05), 0.0005);

    /// <summary>z = 1.480e-12 x 41.1e3 x 50 / (1e-3 x 2.5e-3 x 0.8545 x 0.7763) = 1.834: 1.08 z^0.88 = 1.842; 0.2237 + 0.7763 / 2.842 = 0.497.</summary>
    [Fact]
    public void The_rest_drains_with_time()
    {
        Within(0.497, Dewatering.Saturation(Permeability, Porosity, 0.05, 60e3, 1e-3, 50), 0.001);
        double before = 1.0;
        foreach (double seconds in new[] { 1.0, 10.0, 50.0, 60.0, 100.0, 1e3, 1e5 })
        {
            double now = Dewatering.Saturation(Permeability, Porosity, 0.05, 60e3, 1e-3, seconds);
            Assert.InRange(now, 0.2237, before);
            before = now;
        }
    }
}
