using System.Globalization;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules;

/// <summary>Quantities as a message shows them.</summary>
internal static class Wording
{
    private static readonly (long Milliseconds, string Symbol)[] TimeUnits = [(3_600_000, "h"), (60_000, "min"), (1_000, "s")];

    /// <summary>In the largest unit that needs no fraction.</summary>
    public static string Time(Duration time)
    {
        foreach ((long milliseconds, string symbol) in TimeUnits)
        {
            if (time.Milliseconds >= milliseconds && time.Milliseconds % milliseconds == 0)
            {
                return string.Create(CultureInfo.InvariantCulture, $"{time.Milliseconds / milliseconds} {symbol}");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"{time.Milliseconds} ms");
    }

    /// <summary>A value in base units, shown in <paramref name="unit"/> to six digits.</summary>
    public static string Amount(Rational value, Unit unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{(value / unit.Factor).ToDouble():G6} {unit.Symbol}");

    public static string Litres(Rational value) => string.Create(CultureInfo.InvariantCulture, $"{value.ToDouble():G6} L");

    public static string List<T>(IEnumerable<T> items, Func<T, string> name) => string.Join(", ", items.Select(item => $"`{name(item)}`"));
}
