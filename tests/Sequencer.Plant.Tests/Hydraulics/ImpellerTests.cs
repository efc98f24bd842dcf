using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class ImpellerTests
{
    /// <summary>A disc turbine of 0.61 m at 90 rpm in a liquid of 929 kg/m3, power number 5: 1324 W. Source: Geankoplis, Transport Processes and Unit Operations, example 3.4-1, from memory.</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void A_turbine_takes_the_power_of_the_worked_example() => Within(1324.0, Impeller.Power(5.0, 1.5, 0.61, 929.0), 5.0);

    /// <summary>
    /// A. W. Nienow's form from the theory of turbulence, 5.9 T^(2/3) (T / D)^(1/3) (P / (rho V))^(-1/3) with H = T (Chem. Eng. Sci. 52 (1997) 2557, from memory): another correlation of other
    /// measurements, known to lie 5 % higher.
    /// </summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(5.0, 1.5, 0.61, 1.83)]
    [InlineData(1.3, 2.0, 0.5, 1.2)]
    [InlineData(0.3, 1.0, 1.0, 2.5)]
    public void Two_correlations_of_blending_agree(double powerNumber, double turns, double diameter, double tank)
    {
        double dissipated = Impeller.Power(powerNumber, turns, diameter, 1.0) / (Math.PI / 4.0 * tank * tank * tank);
        double nienow = 5.9 * Math.Pow(tank, 2.0 / 3.0) * Math.Cbrt(tank / diameter) / Math.Cbrt(dissipated);
        Within(nienow, Impeller.BlendSeconds(powerNumber, turns, diameter, tank, tank), 0.06 * nienow);
    }
}
