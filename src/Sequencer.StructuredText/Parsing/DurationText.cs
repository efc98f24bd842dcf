using System.Buffers;
using System.Globalization;

namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// Duration literals, IEC 61131-3 (second edition) Table 7: units from days down to milliseconds (third edition: nanoseconds), each at most
/// once and in that order, a fraction on the last, more than a unit holds only on the first.
/// </summary>
internal static class DurationText
{
    private static readonly SearchValues<char> NumberCharacters = SearchValues.Create("0123456789._");
    private static readonly SearchValues<char> UnitLetters = SearchValues.Create("dhmsunDHMSUN");

    /// <summary>The milliseconds of what stands after <c>T#</c>, or null and the fault.</summary>
    public static decimal? Parse(ReadOnlySpan<char> text, out string fault)
    {
        fault = "";
        bool negative = text.StartsWith("-");
        ReadOnlySpan<char> rest = negative ? text[1..] : text;
        decimal total = 0;
        int lastUnit = -1;
        bool fraction = false;
        if (rest.IsEmpty)
        {
            fault = "a number with its unit is missing";
            return null;
        }

        while (!rest.IsEmpty)
        {
            if (fraction)
            {
                fault = "only the last unit can have a fraction";
                return null;
            }

            int numberLength = rest.IndexOfAnyExcept(NumberCharacters);
            ReadOnlySpan<char> number = numberLength < 0 ? rest : rest[..numberLength];
            rest = rest[number.Length..];
            int unit = TakeUnit(ref rest);
            if (unit < 0 || unit <= lastUnit)
            {
                fault = unit < 0 ? "each number has a unit: d, h, m, s, ms, us or ns" : "units go from the largest to the smallest, each once";
                return null;
            }

            if (!TryNumber(number, out decimal value))
            {
                fault = "the number before the unit cannot be read";
                return null;
            }

            if (lastUnit >= 0 && value >= Holds(unit))
            {
                fault = "only the first unit can hold more than fits it";
                return null;
            }

            fraction = number.Contains('.');
            lastUnit = unit;
            total += value * Milliseconds(unit);
        }

        return negative ? -total : total;
    }

    private static int TakeUnit(ref ReadOnlySpan<char> rest)
    {
        int length = rest.IndexOfAnyExcept(UnitLetters);
        length = length < 0 ? rest.Length : length;
        int unit = rest[..length].ToString().ToUpperInvariant() switch { "D" => 0, "H" => 1, "M" => 2, "S" => 3, "MS" => 4, "US" => 5, "NS" => 6, _ => -1 };
        rest = rest[length..];
        if (rest.Length > 1 && rest[0] == '_')
        {
            rest = rest[1..];
        }

        return unit;
    }

    private static bool TryNumber(ReadOnlySpan<char> number, out decimal value)
    {
        value = 0;
        const int MostDigits = 20;
        return !number.IsEmpty && number.Length <= MostDigits
            && char.IsAsciiDigit(number[0]) && char.IsAsciiDigit(number[^1])
            && !number.Contains("__", StringComparison.Ordinal)
            && decimal.TryParse(number.ToString().Replace("_", "", StringComparison.Ordinal), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

    private static decimal Milliseconds(int unit) => unit switch { 0 => 86_400_000, 1 => 3_600_000, 2 => 60_000, 3 => 1_000, 4 => 1, 5 => 0.001m, _ => 0.000001m };

    /// <summary>How much of a unit makes one of the next larger.</summary>
    private static decimal Holds(int unit) => unit switch { 1 => 24, 2 or 3 => 60, 4 or 5 or 6 => 1000, _ => decimal.MaxValue };
}
