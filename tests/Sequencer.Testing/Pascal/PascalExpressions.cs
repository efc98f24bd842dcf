using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Sequencer.Testing.Pascal;

/// <summary>
/// Expressions, token by token. Pascal binds its operators differently, so brackets are put in from the table of precedence alone, as the
/// first translators of formulas did: an operator becomes closing brackets, itself, and opening brackets, the more the looser it binds.
/// </summary>
internal static partial class PascalExpressions
{
    private const int Loosest = 9;

    /// <summary>
    /// IEC 61131-3, table "Operators of the ST language", from memory: tightest first. Behind brackets, calls, and a sign or NOT.
    /// </summary>
    private static readonly Dictionary<string, (int Level, string Pascal)> Operators = new(StringComparer.OrdinalIgnoreCase)
    {
        ["**"] = (1, "**"),
        ["*"] = (2, "*"),
        ["/"] = (2, "div"),
        ["MOD"] = (2, "mod"),
        ["+"] = (3, "+"),
        ["-"] = (3, "-"),
        ["<"] = (4, "<"),
        [">"] = (4, ">"),
        ["<="] = (4, "<="),
        [">="] = (4, ">="),
        ["="] = (5, "="),
        ["<>"] = (5, "<>"),
        ["AND"] = (6, "and"),
        ["&"] = (6, "and"),
        ["XOR"] = (7, "xor"),
        ["OR"] = (8, "or"),
    };

    private static readonly HashSet<string> Functions = new(StringComparer.OrdinalIgnoreCase) { "ABS", "MIN", "MAX", "LIMIT", "SEL", "MOVE" };

    /// <summary>An expression up to a word or mark that cannot be part of one.</summary>
    public static string Read(TextTokens tokens)
    {
        StringBuilder text = new();
        bool isOperand = true;
        int depth = 0;
        text.Append('(', Loosest);
        while (true)
        {
            TextToken token = tokens.Next;
            if (token.Is("("))
            {
                depth++;
                text.Append('(', Loosest + 1);
                isOperand = true;
            }
            else if (token.Is(")") && depth > 0)
            {
                depth--;
                text.Append(')', Loosest + 1);
                isOperand = false;
            }
            else if (token.Is(",") && depth > 0)
            {
                text.Append(')', Loosest).Append(", ").Append('(', Loosest);
                isOperand = true;
            }
            else if (isOperand && (token.Is("-") || token.Is("+") || token.Is("NOT")))
            {
                text.Append(token.Is("NOT") ? " not " : token.Text);
            }
            else if (!isOperand && Operators.TryGetValue(token.Text, out (int Level, string Pascal) known))
            {
                text.Append(')', known.Level).Append(CultureInfo.InvariantCulture, $" {known.Pascal} ").Append('(', known.Level);
                isOperand = true;
            }
            else if (isOperand && token.Kind == TextTokenKind.Name && tokens.Ahead(1).Is(":="))
            {
                // The arguments of a function are in the order in which it declares them.
                tokens.Take();
            }
            else if (isOperand && token.Kind is TextTokenKind.Name or TextTokenKind.Number or TextTokenKind.Duration)
            {
                text.Append(Operand(tokens));
                isOperand = false;
                continue;
            }
            else
            {
                return isOperand ? throw new InvalidOperationException($"an operand is expected, not {token}") : text.Append(')', Loosest).ToString();
            }

            tokens.Take();
        }
    }

    /// <summary>A variable, or a member or an element of one, <c>A.B[I, 2].C</c>.</summary>
    public static string Path(TextTokens tokens)
    {
        StringBuilder path = new(Identifier(tokens.Name()));
        while (true)
        {
            if (tokens.TakeIf("."))
            {
                path.Append(CultureInfo.InvariantCulture, $".{Identifier(tokens.Name())}");
            }
            else if (tokens.TakeIf("["))
            {
                path.Append(CultureInfo.InvariantCulture, $"[{Read(tokens)}");
                while (tokens.TakeIf(","))
                {
                    path.Append(CultureInfo.InvariantCulture, $", {Read(tokens)}");
                }

                tokens.Expect("]");
                path.Append(']');
            }
            else
            {
                return path.ToString();
            }
        }
    }

    /// <summary>A name that Pascal may have for something else too. Of <c>TYPE#Name</c> the type is left out.</summary>
    public static string Identifier(string name) => $"v_{name[(name.IndexOf('#', StringComparison.Ordinal) + 1)..]}";

    public static string Number(string literal)
    {
        string plain = literal.Replace("_", "", StringComparison.Ordinal);
        Match typed = TypePrefix().Match(plain);
        plain = typed.Success ? plain[typed.Length..] : plain;
        string sign = plain.StartsWith('-') ? "-" : "";
        plain = plain.TrimStart('-', '+');
        return sign + (plain.StartsWith("16#", StringComparison.Ordinal) ? "$" + plain[3..]
            : plain.StartsWith("8#", StringComparison.Ordinal) ? "&" + plain[2..]
            : plain.StartsWith("2#", StringComparison.Ordinal) ? "%" + plain[2..]
            : plain);
    }

    /// <summary>Whole milliseconds.</summary>
    public static string Milliseconds(string literal)
    {
        string parts = literal[(literal.IndexOf('#', StringComparison.Ordinal) + 1)..].Replace("_", "", StringComparison.Ordinal);
        decimal sum = 0;
        int end = 0;
        foreach (Match part in DurationPart().Matches(parts))
        {
            sum += decimal.Parse(part.Groups[1].Value, CultureInfo.InvariantCulture) * part.Groups[2].Value.ToUpperInvariant() switch
            {
                "D" => 86_400_000m,
                "H" => 3_600_000m,
                "M" => 60_000m,
                "S" => 1000m,
                _ => 1m,
            };
            end += part.Length;
        }

        return end == parts.Length && sum == decimal.Truncate(sum)
            ? decimal.Truncate(sum).ToString(CultureInfo.InvariantCulture)
            : throw new InvalidOperationException($"{literal} is no whole number of milliseconds");
    }

    private static string Operand(TextTokens tokens)
    {
        TextToken token = tokens.Next;
        if (token.Kind != TextTokenKind.Name)
        {
            tokens.Take();
            return token.Kind == TextTokenKind.Number ? Number(token.Text) : Milliseconds(token.Text);
        }

        if (token.Is("TRUE") || token.Is("FALSE"))
        {
            return tokens.Take().Text;
        }

        if (!tokens.Ahead(1).Is("("))
        {
            return Path(tokens);
        }

        // A function; its brackets come next and are rewritten like any.
        tokens.Take();
        int conversion = token.Text.IndexOf("_TO_", StringComparison.OrdinalIgnoreCase);
        return conversion >= 0 ? $"std{token.Text[conversion..]}"
            : Functions.Contains(token.Text) ? $"std_{token.Text}"
            : Identifier(token.Text);
    }

    [GeneratedRegex("^[A-Z_]+[A-Z0-9_]*#", RegexOptions.IgnoreCase)]
    private static partial Regex TypePrefix();

    [GeneratedRegex(@"([0-9]+(?:\.[0-9]+)?)(MS|D|H|M|S)", RegexOptions.IgnoreCase)]
    private static partial Regex DurationPart();
}
