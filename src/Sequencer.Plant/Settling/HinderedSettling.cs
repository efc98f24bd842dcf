using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Settling;

/// <summary>Small spheres that settle in each other's way: Stokes' velocity, and what a crowd keeps of it.</summary>
internal static class HinderedSettling
{
    /// <summary>Richardson and Zaki, Trans. Inst. Chem. Eng. 32 (1954) 35: the power where the Reynolds number is below 0.2.</summary>
    private const double RichardsonZaki = 4.65;

    /// <summary>Stokes' velocity alone, m/s; a difference of densities in kg/m3.</summary>
    public static double Alone(double diameter, double densityDifference, double viscosity) =>
        OutletFlow.Gravity * diameter * diameter * densityDifference / (18.0 * viscosity);

    /// <summary>The part of its velocity alone that a crowd of small particles keeps, v = v0 e^4.65 (Richardson and Zaki).</summary>
    public static double Crowded(double liquidFraction) => Math.Pow(Math.Max(0.0, liquidFraction), RichardsonZaki);
}
