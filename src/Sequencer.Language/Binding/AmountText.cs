using System.Globalization;
using System.Numerics;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Exact amounts as a person writes them: <c>4.5 m3</c>.</summary>
public static class AmountText
{
    private const int MostDecimals = 6;

    /// <summary>For amounts so small that fewer would show nothing but zeros.</summary>
    private const int MostDecimalsOfSmall = 15;

    /// <param name="value">In base units.</param>
    /// <param name="unit">The unit to show it in; null shows the bare number.</param>
    public static string Show(Rational value, Unit? unit)
    {
        Rational shown = unit is null ? value : value / unit.Factor;
        int decimals = 0;
        Rational scaled = shown;
        while (!scaled.IsInteger && decimals < (BigInteger.Abs(scaled.Numerator) < scaled.Denominator ? MostDecimalsOfSmall : MostDecimals))
        {
            scaled *= 10;
            decimals++;
        }

        string number = Decimal(scaled.IsInteger ? scaled.Numerator : (scaled + new Rational(1, 2)).Floor(), decimals);
        return unit is null ? number : $"{number} {unit.Symbol}";
    }

    private static string Decimal(BigInteger digits, int decimals)
    {
        string text = BigInteger.Abs(digits).ToString(CultureInfo.InvariantCulture).PadLeft(decimals + 1, '0');
        string sign = digits.Sign < 0 ? "-" : string.Empty;
        return decimals == 0 ? sign + text : $"{sign}{text[..^decimals]}.{text[^decimals..]}";
    }
}
