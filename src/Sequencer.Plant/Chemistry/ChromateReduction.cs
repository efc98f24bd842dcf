namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Reduction of chromium(VI) by sulphite in acid water, 2 HCrO4- + 3 HSO3- + 5 H+ = 2 Cr+3 + 3 SO4-2 + 5 H2O (textbooks of
/// effluent treatment), and the potential that a redox probe shows meanwhile. Rate and potential are simple models, no
/// standard's and no measured law: they have the order of size that practice has, and are not to be designed by.
/// </summary>
public static class ChromateReduction
{
    /// <summary>mol of sulphite for one mol of chromium(VI): 3 HSO3- for 2 HCrO4-.</summary>
    public const double SulphitePerChromate = 1.5;

    /// <summary>
    /// s; where a plant says nothing. With the 0.7 mmol/L of sulphite that is left over in practice 99.9 % is reduced in 3 min at
    /// pH 2, in 33 min at pH 3 and in two days at pH 5 (from memory: seconds to minutes, tens of minutes, hours and more).
    /// </summary>
    public const double DefaultReducedInSeconds = 20.0;

    /// <summary>mol/L of sulphite at which the time constant is given.</summary>
    private const double UsualSulphite = 1e-3;

    /// <summary>pH at which the time constant is given.</summary>
    private const double UsualPh = 2.0;

    /// <summary>Least acidity that counts: stronger acid makes the model no faster (it would only cost steps).</summary>
    private const double LeastPh = 1.0;

    private static readonly CouplePotential Potential = new(EvenMillivolts: 380.0, EvenPh: 2.5, MillivoltsPerDecade: 60.0, MillivoltsPerPh: 60.0);

    /// <summary>
    /// mol/(L s) of chromium(VI) reduced: first order in chromium(VI), in sulphite and in the proton.
    /// </summary>
    /// <param name="chromate">mol/L of chromium(VI), all its forms</param>
    /// <param name="sulphite">mol/L of sulphite, all its forms</param>
    /// <param name="ph">pH</param>
    /// <param name="reducedInSeconds">time constant of chromium(VI) at pH 2 in 1 mmol/L of sulphite; configuration</param>
    public static double Rate(double chromate, double sulphite, double ph, double reducedInSeconds) =>
        chromate * (sulphite / UsualSulphite) * Math.Pow(10.0, UsualPh - Math.Max(LeastPh, ph)) / reducedInSeconds;

    /// <summary>
    /// mV against silver/silver chloride, E = 380 + 60 log10((Cr(VI) + f) / (S(IV) + f)) - 60 (pH - 2.5), f = 1 umol/L.
    /// </summary>
    public static double Millivolts(double chromate, double sulphite, double ph) =>
        Potential.Millivolts(chromate, sulphite, ph);
}
