namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Destruction of cyanide by hypochlorite (textbooks of effluent treatment), and the potential that a redox probe shows meanwhile:
/// <code>
/// at once:  CN- + OCl- + H2O = CNCl + 2 OH-            whatever the pH; CNCl is a gas that kills
/// stage 1:  CNCl + 2 OH- = OCN- + Cl- + H2O            in minutes from pH 11 on, in hours at pH 10
/// stage 2:  2 OCN- + 3 OCl- + H2O = N2 + 2 HCO3- + 3 Cl-   about pH 8.5, with hypochlorite left over
/// </code>
/// Rates and potential are simple models, no standard's and no measured law: they have the order of size that practice has, and are not to be designed by.
/// </summary>
public static class CyanideOxidation
{
    /// <summary>mol of hypochlorite for one mol of cyanate: 3 OCl- for 2 OCN-.</summary>
    public const double HypochloritePerCyanate = 1.5;

    /// <summary>s, of cyanide in 1 mmol/L of hypochlorite; where a plant says nothing. The reaction itself is faster than any mixing.</summary>
    public const double DefaultCyanideOxidisedInSeconds = 5.0;

    /// <summary>
    /// s, of cyanogen chloride at pH 11; where a plant says nothing. 4.5 L/(mol s) of hydroxide at 26.5 C (P. L. Bailey and E. Bishop, J. Chem. Soc. Dalton Trans. 1973,
    /// 912, from memory) with 1 mmol/L of it. What hypochlorite that is left over speeds it up is left out.
    /// </summary>
    public const double DefaultHydrolysedInSeconds = 220.0;

    /// <summary>
    /// s, of cyanate at pH 8.5 in 1 mmol/L of hypochlorite; where a plant says nothing. 99 % is gone in 23 min at pH 8.5 and in half a day at pH 10 (from memory: half an hour to an
    /// hour at pH 8 to 8.5, none to speak of in the first stage).
    /// </summary>
    public const double DefaultCyanateOxidisedInSeconds = 300.0;

    /// <summary>mol/L of hypochlorite at which time constants are given.</summary>
    private const double UsualHypochlorite = 1e-3;

    private const double UsualHydrolysisPh = 11.0;
    private const double UsualCyanatePh = 8.5;

    /// <summary>Stronger alkali makes the model no faster (it would only cost steps).</summary>
    private const double MostPh = 12.0;

    /// <summary>Less alkali makes the model no faster (nobody works there).</summary>
    private const double LeastPh = 7.0;

    private static readonly CouplePotential Potential = new(EvenMillivolts: 60.0, EvenPh: 11.0, MillivoltsPerDecade: 110.0, MillivoltsPerPh: 100.0);

    /// <summary>mol/(L s) of cyanide that becomes cyanogen chloride: first order in both.</summary>
    public static double ChlorinationRate(double cyanide, double hypochlorite, double oxidisedInSeconds) =>
        cyanide * (hypochlorite / UsualHypochlorite) / oxidisedInSeconds;

    /// <summary>mol/(L s) of cyanogen chloride that becomes cyanate: first order in it and in hydroxide.</summary>
    public static double HydrolysisRate(double cyanogenChloride, double ph, double hydrolysedInSeconds) =>
        cyanogenChloride * Math.Pow(10.0, Math.Min(MostPh, ph) - UsualHydrolysisPh) / hydrolysedInSeconds;

    /// <summary>mol/(L s) of cyanate that becomes nitrogen and carbonate: first order in it, in hypochlorite and in the proton.</summary>
    public static double CyanateRate(double cyanate, double hypochlorite, double ph, double oxidisedInSeconds) =>
        cyanate * (hypochlorite / UsualHypochlorite) * Math.Pow(10.0, UsualCyanatePh - Math.Max(LeastPh, ph)) / oxidisedInSeconds;

    /// <summary>
    /// mV against silver/silver chloride, E = 60 + 110 log10((OCl + f) / (CN + f)) - 100 (pH - 11), f = 1 umol/L.
    /// </summary>
    public static double Millivolts(double hypochlorite, double cyanide, double ph) =>
        Potential.Millivolts(hypochlorite, cyanide, ph);
}
