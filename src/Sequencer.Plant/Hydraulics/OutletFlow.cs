namespace Sequencer.Plant.Hydraulics;

/// <summary>Flow out of a tank by its own head.</summary>
internal static class OutletFlow
{
    /// <summary>m/s2, standard gravity (ISO 80000-3).</summary>
    public const double Gravity = 9.80665;

    private const double LitresPerCubicMetre = 1000.0;

    /// <summary>Torricelli with a coefficient of discharge: Q = Cd A sqrt(2 g h), in L/s; h in m, bore in m.</summary>
    public static double LitresPerSecond(double headMetres, double boreMetres, double dischargeCoefficient)
    {
        double area = Math.PI / 4.0 * boreMetres * boreMetres;
        return dischargeCoefficient * area * Math.Sqrt(2.0 * Gravity * Math.Max(headMetres, 0.0)) * LitresPerCubicMetre;
    }
}
