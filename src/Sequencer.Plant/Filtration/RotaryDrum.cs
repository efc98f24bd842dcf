namespace Sequencer.Plant.Filtration;

/// <summary>
/// A drum that turns through a bath: each place filters at constant pressure from nothing for as long as it is under. The area is that of the whole drum;
/// the time under is the submerged fraction of the time of a turn.
/// </summary>
internal static class RotaryDrum
{
    /// <summary>
    /// Filtrate in m3 for each m2 of drum and second: V/(A T) = (-R/T + sqrt((R/T)^2 + 2 c alpha dp f / (mu T))) / (alpha c), for a turn of T seconds of which
    /// the fraction f is under. Source: Geankoplis, Transport Processes and Unit Operations, chapter 14; with R = 0 it is the equation of its example 14.2-4. Written so that nothing
    /// cancels where the water is nearly clean: without solids it is Darcy's f dp / (mu R).
    /// </summary>
    public static double Flux(FilterCake cake, double viscosity, double mediumResistance, double pressure, double submerged, double turnSeconds)
    {
        double medium = mediumResistance / turnSeconds;
        double driving = 2.0 * pressure * submerged / (viscosity * turnSeconds);
        return driving / (Math.Sqrt((medium * medium) + (cake.SpecificResistance * cake.DryPerFiltrate * driving)) + medium);
    }
}
