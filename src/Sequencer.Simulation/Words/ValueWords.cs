using System.Globalization;

namespace Sequencer.Simulation.Words;

/// <summary>Values with their units, to the decimals that mean something.</summary>
public static class ValueWords
{
    /// <summary>The power of ten below which nobody counts noughts.</summary>
    private const int SmallestWritten = -4;

    /// <summary>Less than this is what a decay has left of nothing: a molecule is 1.7e-24 mol.</summary>
    private const double Least = 1e-24;

    /// <summary>To a number of decimals, all of them shown, with the unit.</summary>
    public static string Of(double value, int decimals, string unit)
    {
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
        string number = rounded.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }

    /// <summary>To about <paramref name="figures"/> significant figures, without a trailing zero after them, as <c>8.5e-7</c> where it is small; words where there is no value.</summary>
    public static string Significant(double value, int figures, string unit)
    {
        if (!double.IsFinite(value))
        {
            return "no value";
        }

        value = Math.Abs(value) < Least ? 0 : value;
        int magnitude = value == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value)));
        int decimals = Math.Clamp(figures - 1 - magnitude, 0, 9);
        double rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;
        string number = magnitude < SmallestWritten
            ? value.ToString($"0.{new string('#', figures - 1)}e+0", CultureInfo.InvariantCulture)
            : rounded.ToString("0.#########", CultureInfo.InvariantCulture);
        return unit.Length == 0 ? number : $"{number} {unit}";
    }
}
