namespace Sequencer.Plant.Filtration;

/// <summary>A coat of filter aid on a drum, of which a knife takes a little with what was filtered on it in each turn.</summary>
internal static class Precoat
{
    /// <summary>One darcy in m2 (conversion from memory).</summary>
    public const double Darcy = 9.869233e-13;

    /// <summary>mm an hour.</summary>
    public static double KnifeAdvance(double millimetresPerTurn, double turnsPerMinute) => millimetresPerTurn * turnsPerMinute * 60.0;

    /// <summary>Hours until a coat is cut down to the heel that must stay (all in mm).</summary>
    public static double RunHours(double thickness, double heel, double millimetresPerTurn, double turnsPerMinute) =>
        (thickness - heel) / KnifeAdvance(millimetresPerTurn, turnsPerMinute);

    /// <summary>Dry filter aid taken off, kg/(m2 h), of a coat with so many kg in a m3.</summary>
    public static double Shaved(double millimetresPerTurn, double turnsPerMinute, double dryDensity) =>
        KnifeAdvance(millimetresPerTurn, turnsPerMinute) / 1000.0 * dryDensity;

    /// <summary>Darcy's law, m/s: q = k dp / (mu L), with permeability k (m2), pressure difference (Pa), viscosity (Pa s) and thickness (m).</summary>
    public static double CleanFlux(double permeability, double pressure, double viscosity, double thickness) => permeability * pressure / (viscosity * thickness);
}
