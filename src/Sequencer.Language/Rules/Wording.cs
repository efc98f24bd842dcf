using System.Globalization;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules;

/// <summary>Quantities as a message shows them.</summary>
internal static class Wording
{
    public static string Time(Duration time) => time.ToString();

    /// <summary>A value in base units, shown in <paramref name="unit"/> to six digits.</summary>
    public static string Amount(Rational value, Unit unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{(value / unit.Factor).ToDouble():G6} {unit.Symbol}");

    public static string Litres(Rational value) => string.Create(CultureInfo.InvariantCulture, $"{value.ToDouble():G6} L");

    public static string List<T>(IEnumerable<T> items, Func<T, string> name) => string.Join(", ", items.Select(item => $"`{name(item)}`"));
}
