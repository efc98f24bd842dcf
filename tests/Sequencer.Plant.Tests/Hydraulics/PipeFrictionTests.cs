using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Tests.OutsideChecks;
using static Sequencer.Plant.Tests.Chemistry.Expect;

namespace Sequencer.Plant.Tests.Hydraulics;

public sealed class PipeFrictionTests
{
    /// <summary>Computed from Colebrook's equation as given in Ind. Eng. Chem. Res. 48 (2009) 3665.</summary>
    [OutsideCheck(Basis.Computed)]
    [Theory]
    [InlineData(1e5, 0, 0.017990)]
    [InlineData(1e5, 1e-4, 0.018514)]
    [InlineData(1e5, 1e-3, 0.022175)]
    [InlineData(1e6, 1e-4, 0.013441)]
    [InlineData(4000, 1e-3, 0.040910)]
    [InlineData(1e4, 0.05, 0.073801)]
    [InlineData(1e7, 1e-5, 0.008996)]
    public void Turbulent_flow_meets_Colebrook(double reynolds, double roughness, double factor) => Within(factor, PipeFriction.Factor(reynolds, roughness), 1e-5);

    /// <summary>The explicit formulas of Swamee and Jain and of Haaland (both from memory) are known to come within 2.5 %: an independent judge of the iteration.</summary>
    [OutsideCheck(Basis.Memory)]
    [Theory]
    [InlineData(1e5, 1e-4)]
    [InlineData(1e6, 1e-4)]
    [InlineData(1e7, 1e-5)]
    [InlineData(5e4, 1e-3)]
    public void Explicit_formulas_are_near(double reynolds, double roughness)
    {
        double swameeJain = 0.25 / Math.Pow(Math.Log10((roughness / 3.7) + (5.74 / Math.Pow(reynolds, 0.9))), 2);
        double haaland = Math.Pow(-1.8 * Math.Log10(Math.Pow(roughness / 3.7, 1.11) + (6.9 / reynolds)), -2);
        double factor = PipeFriction.Factor(reynolds, roughness);
        Within(factor, swameeJain, 0.025 * factor);
        Within(factor, haaland, 0.025 * factor);
    }

    /// <summary>f = 64/Re (textbooks, from memory).</summary>
    [OutsideCheck(Basis.Memory)]
    [Fact]
    public void Laminar_flow_knows_no_roughness() => Within(0.064, PipeFriction.Factor(1000, 0.01), 1e-12);

    /// <summary>10 m3/h in 50 m of a pipe of 52.5 mm, 0.045 mm rough, at 20 C: 1.814 m. Computed.</summary>
    [OutsideCheck(Basis.Computed)]
    [Fact]
    public void A_pipe_takes_head() => Within(1.814, PipeFriction.HeadLoss(10.0 / 3600, 0.0525, 50, 0.045e-3, 1.004e-6), 0.002 * 1.814);
}
