namespace Sequencer.Plant.Filtration;

/// <summary>
/// Filtration at constant pressure through a cake that grows and a medium that does not (Ruth): dt/dV = K V + B, so that
/// t = K V^2 / 2 + B V. With viscosity mu (Pa s), specific resistance of the cake alpha (m/kg), dry cake for each volume of
/// filtrate c (kg/m3), area A (m2), pressure difference dp (Pa) and resistance of the medium R (1/m), K = mu alpha c / (A^2 dp)
/// and B = mu R / (A dp). Source: Geankoplis, Transport Processes and Unit Operations, chapter 14.
/// </summary>
/// <param name="CakeTerm">K, s/m6.</param>
/// <param name="MediumTerm">B, s/m3.</param>
internal readonly record struct RuthFiltration(double CakeTerm, double MediumTerm)
{
    public static RuthFiltration Of(FilterCake cake, double viscosity, double mediumResistance, double area, double pressure) => new(
        viscosity * cake.SpecificResistance * cake.DryPerFiltrate / (area * area * pressure),
        viscosity * mediumResistance / (area * pressure));

    /// <summary>The line t/V = K V / 2 + B by least squares through measured times (s) and volumes (m3) of filtrate.</summary>
    public static RuthFiltration Fitted(IReadOnlyCollection<(double Seconds, double Volume)> points)
    {
        double meanVolume = points.Average(point => point.Volume);
        double meanRatio = points.Average(point => point.Seconds / point.Volume);
        double slope = points.Sum(point => (point.Volume - meanVolume) * ((point.Seconds / point.Volume) - meanRatio))
            / points.Sum(point => (point.Volume - meanVolume) * (point.Volume - meanVolume));
        return new RuthFiltration(2.0 * slope, meanRatio - (slope * meanVolume));
    }

    /// <summary>alpha in m/kg.</summary>
    public double SpecificResistance(double dryPerFiltrate, double viscosity, double area, double pressure) =>
        CakeTerm * area * area * pressure / (viscosity * dryPerFiltrate);

    /// <summary>R in 1/m.</summary>
    public double MediumResistance(double viscosity, double area, double pressure) => MediumTerm * area * pressure / viscosity;

    /// <summary>Seconds to go from one volume of filtrate to another, m3.</summary>
    public double Seconds(double from, double to) => (CakeTerm / 2.0 * ((to * to) - (from * from))) + (MediumTerm * (to - from));

    /// <summary>Filtrate (m3) so many seconds after there was a volume of it.</summary>
    public double Volume(double from, double seconds) => PositiveRoot(CakeTerm / 2.0, MediumTerm, Seconds(0.0, from) + seconds);

    /// <summary>Filtrate (m3) when at a constant rate this pressure has been reached after so many seconds: then the rate V/t meets 1 / (K V + B).</summary>
    public double VolumeAtConstantRate(double seconds) => PositiveRoot(CakeTerm, MediumTerm, seconds);

    /// <summary>m3/s with so much filtrate through.</summary>
    public double Rate(double volume) => 1.0 / ((CakeTerm * volume) + MediumTerm);

    /// <summary>The same cake at another pressure, as far as it is not compressible.</summary>
    public RuthFiltration AtPressure(double ratio) => new(CakeTerm / ratio, MediumTerm / ratio);

    /// <summary>The positive x of a x^2 + b x = c.</summary>
    private static double PositiveRoot(double a, double b, double c) => 2.0 * c / (b + Math.Sqrt((b * b) + (4.0 * a * c)));
}
