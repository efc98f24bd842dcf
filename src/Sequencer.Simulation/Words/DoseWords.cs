using System.Globalization;

namespace Sequencer.Simulation.Words;

/// <summary>Amounts of reagent as a person reads them.</summary>
public static class DoseWords
{
    /// <summary>Three digits that count, as <c>5.68 L</c>, <c>12.3 m3</c> or <c>450 mL</c>.</summary>
    public static string Litres(double litres)
    {
        (double scale, string unit) = UnitFor(litres);
        return $"{Digits(litres / scale, 3)} {unit}";
    }

    /// <summary>As <c>10.23 L, give or take 0.49 L</c>: no more decimals than the uncertainty has.</summary>
    public static string Litres(double litres, double uncertainty)
    {
        (double scale, string unit) = UnitFor(litres);
        int decimals = Math.Clamp(2 - Magnitude(uncertainty / scale), 0, 6);
        return string.Create(
            CultureInfo.InvariantCulture, $"{Math.Round(litres / scale, decimals).ToString("F" + decimals, CultureInfo.InvariantCulture)} {unit}, give or take {Digits(uncertainty / scale, 2)} {unit}");
    }

    private static (double Scale, string Unit) UnitFor(double litres) => Math.Abs(litres) switch
    {
        >= 10_000 => (1000.0, "m3"),
        >= 1 or 0 => (1.0, "L"),
        _ => (1e-3, "mL"),
    };

    private static string Digits(double value, int digits) => Math.Round(value, Math.Clamp(digits - Magnitude(value), 0, 6)).ToString(CultureInfo.InvariantCulture);

    /// <summary>How many digits stand before the point; below 1 it counts down.</summary>
    private static int Magnitude(double value) => value == 0 ? 1 : (int)Math.Floor(Math.Log10(Math.Abs(value))) + 1;
}
