namespace Sequencer.Plant.Hydraulics;

/// <summary>What an impeller in turbulent flow puts into a tank and how soon it has blended it.</summary>
internal static class Impeller
{
    /// <summary>ln 20: what is left of a difference that dies away evenly falls to 5 % in three time constants.</summary>
    private static readonly double LagsOfBlending = Math.Log(20.0);

    /// <summary>W: P = N_p rho N^3 D^5, with N in 1/s, D in m, rho in kg/m3 (textbooks of mixing).</summary>
    public static double Power(double powerNumber, double turnsPerSecond, double diameter, double density) =>
        powerNumber * density * Math.Pow(turnsPerSecond, 3.0) * Math.Pow(diameter, 5.0);

    /// <summary>
    /// s to 95 % of evenness: 5.2 T^1.5 H^0.5 / (N_p^(1/3) N D^2), with a tank of the diameter T filled to H, in m; for N D^2 / nu above 6400 N_p^(-1/3). Source: R. K. Grenville, thesis,
    /// Cranfield (1992), as in the Handbook of Industrial Mixing (2004), chapter 9, from memory.
    /// </summary>
    public static double BlendSeconds(double powerNumber, double turnsPerSecond, double diameter, double tankDiameter, double depth) =>
        5.2 * Math.Pow(tankDiameter, 1.5) * Math.Sqrt(depth) / (Math.Cbrt(powerNumber) * turnsPerSecond * diameter * diameter);

    /// <summary>s; the time constant that comes to 95 % in the time of blending.</summary>
    public static double LagSeconds(double blendSeconds) => blendSeconds / LagsOfBlending;
}
