namespace Sequencer.Plant.Chemistry;

/// <summary>
/// What a redox probe shows in water with an oxidant and a reductant of each other, mV against silver/silver chloride, as a simple model whose figures are no
/// standard's and no measured law's: E = E_0 + d log10((oxidant + f) / (reductant + f)) - a (pH - pH_0), f = 1 umol/L.
/// </summary>
/// <param name="EvenMillivolts">E_0, with as much of one as of the other at pH_0.</param>
/// <param name="EvenPh">pH_0.</param>
/// <param name="MillivoltsPerDecade">d, for a tenfold ratio.</param>
/// <param name="MillivoltsPerPh">a, what a unit of pH takes off.</param>
internal sealed record CouplePotential(double EvenMillivolts, double EvenPh, double MillivoltsPerDecade, double MillivoltsPerPh)
{
    /// <summary>mol/L; where one of the two is gone the other couples of the water hold the potential.</summary>
    private const double OtherCouples = 1e-6;

    /// <param name="oxidant">mol/L</param>
    /// <param name="reductant">mol/L</param>
    /// <param name="ph">pH</param>
    public double Millivolts(double oxidant, double reductant, double ph) =>
        EvenMillivolts
        + (MillivoltsPerDecade * Math.Log10((Math.Max(0.0, oxidant) + OtherCouples) / (Math.Max(0.0, reductant) + OtherCouples)))
        - (MillivoltsPerPh * (ph - EvenPh));
}
