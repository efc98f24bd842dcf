using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Electrical conductivity of water from the ions in it. Each ion's limiting conductivity is made less by what is round it, after Onsager, with the size
/// of ions in the denominator (R. A. Robinson and R. H. Stokes, Electrolyte Solutions, chapter 7, constants from memory):
/// <code>
/// lambda = lambda_0 - (2.801e6 |z z'| q / ((1 + sqrt q) (eps T)^1.5) lambda_0 + 41.25 |z| / (eta sqrt(eps T))) sqrt I / (1 + B a sqrt I)
/// </code>
/// S cm2 for a mole of charge, eta in poise, I in mol/L. Written for one salt; for a mixture (our own simplification) z' is the mean charge of the ions of
/// the other sign, weighted by their charges, q is 1/2 as in a salt of equal charges, and all ions are 4 Å large.
/// </summary>
internal sealed class WaterConductivity
{
    private const double Kelvin = 273.15;
    private const double ReferenceCelsius = 25.0;
    private const double PoisePerPascalSecond = 10.0;
    private const double Relaxation = 2.801e6;
    private const double Electrophoresis = 41.25;
    private const double IonAngstroms = 4.0;

    private static readonly double SymmetricSalt = 0.5 / (1.0 + Math.Sqrt(0.5));

    private readonly double[] _charge;
    private readonly IonConductivity[] _ions;

    public WaterConductivity(ChemicalSystem system)
    {
        _charge = [.. system.Species.Select(species => (double)species.Charge)];
        _ions = [.. system.Species.Select(species => IonConductivity.Of(species.Name))];
    }

    /// <summary>mS/cm at a temperature, from mol/L of each species of the system.</summary>
    public double MillisiemensPerCentimetre(ReadOnlySpan<double> molPerLitre, double celsius)
    {
        (double strength, double meanCation, double meanAnion) = Ions(molPerLitre);
        double viscosity = WaterProperties.Viscosity(celsius);
        double thinner = Math.Log(WaterProperties.Viscosity(ReferenceCelsius) / viscosity);
        double permittivityKelvin = DebyeHuckelConstants.RelativePermittivity(celsius + Kelvin) * (celsius + Kelvin);
        double root = Math.Sqrt(strength);
        double crowding = root / (1.0 + (DebyeHuckelConstants.At(celsius).B * IonAngstroms * root));
        double relaxing = Relaxation * SymmetricSalt * crowding / Math.Pow(permittivityKelvin, 1.5);
        double dragging = Electrophoresis * crowding / (viscosity * PoisePerPascalSecond * Math.Sqrt(permittivityKelvin));
        double sum = 0.0;
        for (int index = 0; index < molPerLitre.Length; index++)
        {
            double size = Math.Abs(_charge[index]);
            if (size > 0.0 && molPerLitre[index] > 0.0)
            {
                double limiting = _ions[index].At25 * Math.Exp(_ions[index].ViscosityPower * thinner);
                double opposite = _charge[index] > 0.0 ? meanAnion : meanCation;
                double conducts = limiting - (relaxing * size * opposite * limiting) - (dragging * size);
                sum += size * molPerLitre[index] * Math.Max(0.0, conducts);
            }
        }

        return sum;
    }

    /// <summary>Ionic strength, mol/L, and the mean charge of cations and of anions, each weighted by its charge.</summary>
    private (double Strength, double MeanCation, double MeanAnion) Ions(ReadOnlySpan<double> molPerLitre)
    {
        double cations = 0.0;
        double cationSquares = 0.0;
        double anions = 0.0;
        double anionSquares = 0.0;
        for (int index = 0; index < molPerLitre.Length; index++)
        {
            double charge = _charge[index] * molPerLitre[index];
            cations += Math.Max(0.0, charge);
            anions += Math.Max(0.0, -charge);
            cationSquares += charge > 0.0 ? charge * _charge[index] : 0.0;
            anionSquares += charge < 0.0 ? charge * _charge[index] : 0.0;
        }

        return (0.5 * (cationSquares + anionSquares), Ratio(cationSquares, cations), Ratio(anionSquares, anions));
    }

    private static double Ratio(double squares, double sum) => sum > 0.0 ? squares / sum : 0.0;
}
