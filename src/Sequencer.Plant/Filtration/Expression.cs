namespace Sequencer.Plant.Filtration;

/// <summary>
/// Water squeezed out of a filter cake. A cake that was laid down by filtration goes towards its last water content as the first mode of consolidation does (M. Shirato,
/// T. Murase and others, from memory): U = 1 - exp(-pi^2 T / 4), T = C t / d^2, d the thickness drained through one cloth. A soil under an even excess of pressure
/// (Terzaghi) begins faster and goes on alike.
/// </summary>
internal static class Expression
{
    /// <summary>m2/s, C = k / (mu m_v): k = 1 / (alpha rho), m_v = (1 - rho / rho_squeezed) / p for a cake that the pressure p takes from rho to rho_squeezed, kg dry solids in a m3.</summary>
    public static double Coefficient(double pressure, double viscosity, double specificResistance, double density, double squeezedDensity) =>
        pressure / (viscosity * specificResistance * density * (1.0 - (density / squeezedDensity)));

    /// <summary>s in which e times less is left to come, 4 d^2 / (pi^2 C).</summary>
    public static double Seconds(double coefficient, double thickness) => 4.0 * thickness * thickness / (Math.PI * Math.PI * coefficient);
}
