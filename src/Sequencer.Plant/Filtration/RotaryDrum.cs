namespace Sequencer.Plant.Filtration;

/// <summary>
/// A drum that turns through a bath: each place filters at constant pressure from nothing for as long as it is under. The area is that of the whole drum;
/// the time under is the submerged fraction of the time of a turn.
/// </summary>
internal static class RotaryDrum
{
    /// <summary>
    /// Filtrate in m3 for each m2 of drum and second: V/(A T) = (-R/T + sqrt((R/T)^2 + 2 c alpha dp f / (mu T))) / (alpha c), for a turn of T seconds of which
    /// the fraction f is under. Source: Geankoplis, Transport Processes and Unit Operations, chapter 14; with R = 0 it is the equation of its example 14.2-4.
    /// </summary>
    public static double Flux(FilterCake cake, double viscosity, double mediumResistance, double pressure, double submerged, double turnSeconds)
    {
        double medium = mediumResistance / turnSeconds;
        double product = cake.SpecificResistance * cake.DryPerFiltrate;
        return (Math.Sqrt((medium * medium) + (2.0 * product * pressure * submerged / (viscosity * turnSeconds))) - medium) / product;
    }
}
