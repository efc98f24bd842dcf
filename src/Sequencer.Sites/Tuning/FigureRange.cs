using System.Globalization;

namespace Sequencer.Sites.Tuning;

/// <summary>From where to where a setting may lie, in the unit that is given.</summary>
internal sealed record FigureRange(double Low, double High, string Unit)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Figure(Low)} .. {Figure(High)} {Unit}");

    /// <summary>Three digits or all of a whole number.</summary>
    private static string Figure(double value) => value.ToString(Math.Abs(value) switch { >= 100.0 => "0", >= 10.0 => "0.#", >= 1.0 => "0.##", _ => "0.###" }, CultureInfo.InvariantCulture);
}
