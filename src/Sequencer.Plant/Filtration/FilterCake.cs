namespace Sequencer.Plant.Filtration;

/// <summary>What a slurry makes of a filter cake.</summary>
/// <param name="SpecificResistance">alpha, m/kg of dry cake.</param>
/// <param name="DryPerFiltrate">c, kg of dry cake for each m3 of filtrate.</param>
internal readonly record struct FilterCake(double SpecificResistance, double DryPerFiltrate)
{
    /// <summary>alpha = alpha0 dp^s, dp in Pa: s from 0 (as stiff as sand) to 1. Source: Geankoplis, Transport Processes and Unit Operations, chapter 14.</summary>
    public static double ResistanceUnder(double pressure, double atOnePascal, double compressibility) => atOnePascal * Math.Pow(pressure, compressibility);

    /// <summary>alpha = 1 / (k rho) of a cake of permeability k (m2) that holds rho kg of dry solids in a m3: Darcy's law in other terms.</summary>
    public static double ResistanceOf(double permeability, double dryDensity) => 1.0 / (permeability * dryDensity);

    /// <summary>The same the other way: k in m2.</summary>
    public static double PermeabilityOf(double specificResistance, double dryDensity) => 1.0 / (specificResistance * dryDensity);
}
