using System.Collections.Immutable;

namespace Sequencer.Plant.Chemistry;

/// <summary>
/// An equilibrium constant against temperature: from its value at 25 C and the enthalpy of reaction in kJ/mol
/// (van 't Hoff), or, where <c>Analytic</c> holds coefficients, from
/// log K = a1 + a2 T + a3/T + a4 log10 T + a5/T^2 + a6 T^2 with T in kelvin.
/// </summary>
public sealed record EquilibriumConstant(double Log10At25, double EnthalpyKilojoule, ImmutableArray<double> Analytic)
{
    public const int AnalyticTerms = 6;
    private const double GasConstant = 8.31446262e-3; // kJ/(mol K)
    private const double ReferenceKelvin = 298.15;

    /// <summary>The constant 1 at every temperature, of a component's own ion.</summary>
    public static EquilibriumConstant One { get; } = new(0, 0, []);

    /// <summary>log10 K at <paramref name="celsius"/>.</summary>
    public double Log10(double celsius)
    {
        double kelvin = celsius + 273.15;
        if (Analytic.Length == AnalyticTerms)
        {
            return Analytic[0] + (Analytic[1] * kelvin) + (Analytic[2] / kelvin) + (Analytic[3] * Math.Log10(kelvin))
                + (Analytic[4] / (kelvin * kelvin)) + (Analytic[5] * kelvin * kelvin);
        }

        return Log10At25 - (EnthalpyKilojoule / (GasConstant * Math.Log(10)) * ((1 / kelvin) - (1 / ReferenceKelvin)));
    }
}
