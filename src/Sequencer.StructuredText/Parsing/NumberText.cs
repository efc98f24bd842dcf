namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// Integer and real literals, IEC 61131-3 (second edition) Tables 4 and 5: single underscores between digits,
/// bases 2, 8 and 16, a digit on both sides of a decimal point.
/// </summary>
internal static class NumberText
{
    /// <summary>The value, or 0 and the fault.</summary>
    public static long ParseInteger(ReadOnlySpan<char> text, out string? fault)
    {
        int hash = text.IndexOf('#');
        int numberBase = 10;
        ReadOnlySpan<char> digits = text;
        if (hash >= 0)
        {
            numberBase = text[..hash] switch { "2" => 2, "8" => 8, "16" => 16, _ => 0 };
            digits = text[(hash + 1)..];
        }

        if (numberBase == 0)
        {
            fault = "the base is 2, 8 or 16";
            return 0;
        }

        fault = FaultOfUnderscores(digits);
        return fault is null ? Accumulate(digits, numberBase, out fault) : 0;
    }

    /// <summary>What is wrong with a number that has a point or an exponent, else null.</summary>
    public static string? FaultOfReal(ReadOnlySpan<char> text)
    {
        int point = text.IndexOf('.');
        if (point < 0)
        {
            return "a number with an exponent has a decimal point too";
        }

        if (point == 0 || point + 1 >= text.Length || !char.IsAsciiDigit(text[point + 1]))
        {
            return "a digit stands on both sides of the decimal point";
        }

        foreach (char character in text)
        {
            if (!char.IsAsciiDigit(character) && character is not ('_' or '.' or 'e' or 'E' or '+' or '-'))
            {
                return $"`{character}` cannot follow a number";
            }
        }

        return FaultOfUnderscores(text);
    }

    private static long Accumulate(ReadOnlySpan<char> digits, int numberBase, out string? fault)
    {
        Int128 value = 0;
        foreach (char character in digits)
        {
            if (character == '_')
            {
                continue;
            }

            int digit = char.IsAsciiHexDigit(character) ? Convert.ToInt32(character.ToString(), 16) : int.MaxValue;
            if (digit >= numberBase)
            {
                fault = $"`{character}` is not a digit of base {numberBase.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
                return 0;
            }

            value = (value * numberBase) + digit;
            if (value > long.MaxValue)
            {
                fault = "it does not fit 64 bits";
                return 0;
            }
        }

        fault = null;
        return (long)value;
    }

    private static string? FaultOfUnderscores(ReadOnlySpan<char> digits) =>
        digits.IsEmpty ? "digits are missing"
        : digits[0] == '_' || digits[^1] == '_' || digits.Contains("__", StringComparison.Ordinal) ? "single underscores stand between digits only"
        : null;
}
