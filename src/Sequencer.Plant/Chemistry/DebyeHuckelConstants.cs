namespace Sequencer.Plant.Chemistry;

/// <summary>Debye-Hückel parameters of water: A in (kg/mol)^0.5 for log10, B in (kg/mol)^0.5 per ångström.</summary>
public readonly record struct DebyeHuckelConstants(double A, double B)
{
    private const double ElementaryChargeSquaredPerBoltzmann = 1.671008e-3; // cm K, esu^2/(erg/K)
    private const double Avogadro = 6.02214076e23;

    /// <summary>
    /// At <paramref name="celsius"/> (0 to 100) and 1 bar: A = B e^2/(2 ln 10 eps k T),
    /// B = sqrt(8 pi N e^2 rho/(1000 eps k T)).
    /// </summary>
    public static DebyeHuckelConstants At(double celsius)
    {
        double kelvin = celsius + 273.15;
        double bjerrum = ElementaryChargeSquaredPerBoltzmann / (RelativePermittivity(kelvin) * kelvin);
        double perCentimetre = Math.Sqrt(8 * Math.PI * Avogadro * bjerrum * WaterDensity(celsius) / 1000);
        return new(perCentimetre * bjerrum / (2 * Math.Log(10)), perCentimetre / 1e8);
    }

    /// <summary>Relative permittivity of water at 1 bar (Bradley and Pitzer, J. Phys. Chem. 83 (1979) 1599).</summary>
    internal static double RelativePermittivity(double kelvin)
    {
        double at1000Bar = 3.4279e2 * Math.Exp(kelvin * (-5.0866e-3 + (kelvin * 9.4690e-7)));
        double c = -2.0525 + (3.1159e3 / (-1.8289e2 + kelvin));
        double b = -8.0325e3 + (4.2142e6 / kelvin) + (2.1417 * kelvin);
        return at1000Bar + (c * Math.Log((b + 1.01325) / (b + 1000)));
    }

    /// <summary>Density of water in g/cm3 (Kell, J. Chem. Eng. Data 20 (1975) 97; coefficients from memory).</summary>
    private static double WaterDensity(double celsius)
    {
        double numerator = 999.83952 + (celsius * (16.945176 + (celsius * (-7.9870401e-3 + (celsius * (-46.170461e-6
            + (celsius * (105.56302e-9 - (celsius * 280.54253e-12)))))))));
        return numerator / (1 + (16.879850e-3 * celsius)) / 1000;
    }
}
