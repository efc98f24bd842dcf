using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>Numbers and quantities out of scalars; reports SEQ0807 to SEQ0810.</summary>
internal static class ScalarReading
{
    private const NumberStyles Written = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    public static double? Number(YamlScalar scalar, string what, NumberRange range, DiagnosticBag diagnostics)
    {
        if (Parse(scalar.Text) is not { } number)
        {
            diagnostics.Add(YamlDiagnostics.WrongKind(scalar.Span, what, "a number", $"`{Shortened(scalar.Text)}`"));
            return null;
        }

        if (!range.Contains(number))
        {
            diagnostics.Add(YamlDiagnostics.OutOfRange(scalar.Span, what, scalar.Text, range.ToString()));
            return null;
        }

        return number;
    }

    public static long? WholeNumber(YamlScalar scalar, string what, long low, long high, DiagnosticBag diagnostics)
    {
        if (!long.TryParse(scalar.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long number))
        {
            diagnostics.Add(YamlDiagnostics.WrongKind(scalar.Span, what, "a whole number", $"`{Shortened(scalar.Text)}`"));
            return null;
        }

        if (number < low || number > high)
        {
            string allowed = string.Create(CultureInfo.InvariantCulture, $"{low} .. {high}");
            diagnostics.Add(YamlDiagnostics.OutOfRange(scalar.Span, what, scalar.Text, allowed));
            return null;
        }

        return number;
    }

    public static Quantity? QuantityOf(YamlScalar scalar, string what, Dimension dimension, NumberRange range, DiagnosticBag diagnostics)
    {
        string text = scalar.Text.Trim();
        int numberLength = NumberLength(text);
        string symbol = text[numberLength..].Trim();
        if (Parse(text[..numberLength]) is not { } number)
        {
            diagnostics.Add(YamlDiagnostics.WrongKind(scalar.Span, what, "a number with its unit", $"`{Shortened(text)}`"));
            return null;
        }

        if (Unit.Find(symbol) is not { } unit)
        {
            diagnostics.Add(YamlDiagnostics.UnknownUnit(scalar.Span, what, Shortened(symbol), Unit.SymbolsOf(dimension)));
            return null;
        }

        if (unit.Dimension != dimension)
        {
            diagnostics.Add(YamlDiagnostics.WrongDimension(scalar.Span, what, symbol, Unit.SymbolsOf(dimension)));
            return null;
        }

        double value = number * unit.Scale;
        if (!range.Contains(value))
        {
            diagnostics.Add(YamlDiagnostics.OutOfRange(scalar.Span, what, text, Allowed(range, unit)));
            return null;
        }

        return new Quantity(value, unit, scalar.Span);
    }

    private static string Allowed(NumberRange range, Unit unit) =>
        $"{new NumberRange(range.Low / unit.Scale, range.High / unit.Scale)} {unit.Symbol}";

    /// <summary>Null for what is no number; <c>1e999</c> comes out as infinity and fails every range.</summary>
    private static double? Parse(string text) =>
        double.TryParse(text, Written, CultureInfo.InvariantCulture, out double number) && !double.IsNaN(number) ? number : null;

    /// <summary>How many characters at the start belong to the number.</summary>
    private static int NumberLength(string text)
    {
        int length = 0;
        while (length < text.Length && (char.IsAsciiDigit(text[length]) || text[length] is '.' or '+' or '-' || IsExponent(text, length)))
        {
            length++;
        }

        return length;
    }

    /// <summary>An <c>e</c> between a digit and a digit or sign.</summary>
    private static bool IsExponent(string text, int index) =>
        text[index] is 'e' or 'E'
        && index > 0 && (char.IsAsciiDigit(text[index - 1]) || text[index - 1] == '.')
        && index + 1 < text.Length && (char.IsAsciiDigit(text[index + 1]) || text[index + 1] is '+' or '-');

    private static string Shortened(string text) => text.Length <= 40 ? text : text[..40] + "...";
}
