namespace Sequencer.Plant.Filtration;

/// <summary>
/// How much of the water in the pores of a layer is left when air is sucked through it. With permeability k (m2), porosity e, thickness L (m), pressure
/// difference dp (Pa), viscosity mu (Pa s), surface tension s (N/m), and grains whose size follows from Kozeny and Carman's k = e^3 x^2 / (180 (1 - e)^2):
/// <code>
/// threshold:    p_b = 4.6 (1 - e) s / (e x) = 4.6 s sqrt(e / (180 k)): below it no air finds its way in
/// in the end:   S_e = 0.155 (1 + 0.031 N^-0.49),   N = 180 k dp / (L s)
/// after t:      (S - S_e) / (1 - S_e) = 1 / (1 + min(1.08 z^0.88, 1.46 z^0.48)),   z = k (dp - p_b) t / (mu L^2 e (1 - S_e))
/// </code>
/// Source: Wakeman and Tarleton, Filtration: Equipment Selection, Modelling and Process Simulation (1999), chapter on dewatering, constants from memory. There z has
/// the whole dp and the two powers meet with a step at z = 1.915; the pressure beyond the threshold and the lesser of the two leave no step (our own simplification).
/// </summary>
internal static class Dewatering
{
    /// <summary>Of water, N/m (from memory; at 20 C).</summary>
    public const double SurfaceTension = 0.0728;

    private const double KozenyCarman = 180.0;
    private const double ThresholdFactor = 4.6;

    /// <summary>Share of a layer that is not grains; both in kg of dry solids to a m3, of the layer and of the grains.</summary>
    public static double Porosity(double layerDensity, double grainDensity) => 1.0 - (layerDensity / grainDensity);

    /// <summary>Pa.</summary>
    public static double Threshold(double permeability, double porosity) =>
        ThresholdFactor * SurfaceTension * Math.Sqrt(porosity / (KozenyCarman * permeability));

    /// <summary>Share of the pores that no time empties.</summary>
    public static double Residual(double permeability, double pressure, double thickness)
    {
        double capillaryNumber = KozenyCarman * permeability * pressure / (thickness * SurfaceTension);
        return Math.Min(1.0, 0.155 * (1.0 + (0.031 * Math.Pow(capillaryNumber, -0.49))));
    }

    /// <summary>Share of the pores that is still full after so many seconds in the air.</summary>
    public static double Saturation(double permeability, double porosity, double thickness, double pressure, double viscosity, double seconds)
    {
        double beyond = pressure - Threshold(permeability, porosity);
        if (beyond <= 0.0 || thickness <= 0.0)
        {
            return 1.0;
        }

        double residual = Residual(permeability, pressure, thickness);
        if (residual >= 1.0)
        {
            return 1.0;
        }

        double time = permeability * beyond * seconds / (viscosity * thickness * thickness * porosity * (1.0 - residual));
        double gone = Math.Min(1.08 * Math.Pow(time, 0.88), 1.46 * Math.Pow(time, 0.48));
        return residual + ((1.0 - residual) / (1.0 + gone));
    }
}
