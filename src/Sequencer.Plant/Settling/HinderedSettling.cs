using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Settling;

/// <summary>
/// Small spheres that settle in each other's way: Stokes' velocity times e^2 psi, psi = 10^(-1.82 (1 - e)), where e is the volume fraction of liquid.
/// Source: Geankoplis, Transport Processes and Unit Operations, section 14.3.
/// </summary>
internal static class HinderedSettling
{
    private const double Crowding = 1.82;

    /// <summary>Richardson and Zaki, Trans. Inst. Chem. Eng. 32 (1954) 35: the power where the Reynolds number is below 0.2.</summary>
    private const double RichardsonZaki = 4.65;

    /// <summary>Volume fraction of liquid in a slurry with this mass fraction of solids; densities in kg/m3.</summary>
    public static double LiquidFraction(double solidsMassFraction, double solidDensity, double liquidDensity)
    {
        double liquid = (1.0 - solidsMassFraction) / liquidDensity;
        return liquid / (liquid + (solidsMassFraction / solidDensity));
    }

    /// <summary>m/s, of spheres of a diameter in m, in a liquid of a viscosity in Pa s.</summary>
    public static double Velocity(double diameter, double solidDensity, double liquidDensity, double viscosity, double liquidFraction)
    {
        return Alone(diameter, solidDensity - liquidDensity, viscosity) * liquidFraction * liquidFraction * Correction(liquidFraction);
    }

    /// <summary>The Reynolds number of the spheres in the slurry; the velocity stands where it is below 1.</summary>
    public static double Reynolds(double diameter, double velocity, double solidDensity, double liquidDensity, double viscosity, double liquidFraction)
    {
        double slurryDensity = (liquidFraction * liquidDensity) + ((1.0 - liquidFraction) * solidDensity);
        return diameter * velocity * slurryDensity * Correction(liquidFraction) / (viscosity * liquidFraction);
    }

    private static double Correction(double liquidFraction) => Math.Pow(10.0, -Crowding * (1.0 - liquidFraction));

    /// <summary>Stokes' velocity alone, m/s; a difference of densities in kg/m3.</summary>
    public static double Alone(double diameter, double densityDifference, double viscosity) =>
        OutletFlow.Gravity * diameter * diameter * densityDifference / (18.0 * viscosity);

    /// <summary>The part of its velocity alone that a crowd of small particles keeps, v = v0 e^4.65 (Richardson and Zaki).</summary>
    public static double Crowded(double liquidFraction) => Math.Pow(Math.Max(0.0, liquidFraction), RichardsonZaki);
}
