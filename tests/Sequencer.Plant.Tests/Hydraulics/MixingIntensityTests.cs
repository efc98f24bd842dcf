using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class MixingIntensityTests
{
    /// <summary>150 W in 50 m3. Source: set problem: 54.8 1/s.</summary>
    [OutsideCheck(Basis.Published)]
    [Fact]
    public void Power_shears_water() => Within(54.8, MixingIntensity.Gradient(150, 1e-3, 50), 0.05);

    /// <summary>A flocculator of 60 by 45 by 14 ft with 930 ft lb/s at 50 F. Source: set problem, answer computed; 1 ft lb/s is 1.355818 W, 1 lb s/ft2 is 47.88026 Pa s.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_flocculator_shears_gently() => Within(30.0, MixingIntensity.Gradient(930 * 1.355818, 2.735e-5 * 47.88026, 60 * 45 * 14 * 0.0283168466), 0.15);

    /// <summary>491 and 1002 W in a m3 of water of 20 C, 1.002 mPa s, shear 700 and 1000 1/s. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(700, 491)]
    [InlineData(1000, 1002)]
    public void A_rapid_mix_shears_hard(double gradient, double watts) => Within(gradient, MixingIntensity.Gradient(watts, 1.002e-3, 1.0), 0.0025 * gradient);
}
