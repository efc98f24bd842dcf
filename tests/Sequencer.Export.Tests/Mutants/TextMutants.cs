using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Sequencer.Export.Tests.Mutants;

/// <summary>Single changes of exported text, as a slip of the hand would make them in a review.</summary>
internal static partial class TextMutants
{
    private const string SwappedLines = "two statements swapped";

    private static readonly ImmutableArray<(string Name, Func<string, string> Change)> OfALine =
    [
        ("AND for OR", line => First(Or(), line, " AND ")),
        ("OR for AND", line => First(And(), line, " OR ")),
        ("a NOT left out", line => First(Not(), line, "")),
        ("> for >=", line => First(AtLeast(), line, "> ")),
        ("a limit one more", line => AtLeastNumber().Replace(line, match => $">= {OneMore(match.Groups[1].Value)}", 1)),
        ("another value compared with", line => EqualNumber().Replace(line, match => $"= {OneMore(match.Groups[1].Value)}", 1)),
        ("a longer timer", line => Preset().Replace(line, match => $"T#{OneMore(match.Groups[1].Value)}", 1)),
        ("a reset left out", line => Reset().Replace(line, match => $"{match.Groups[1].Value} := {match.Groups[1].Value};", 1)),
        ("FALSE for TRUE", line => First(True(), line, ":= FALSE;")),
        ("counts by two", line => First(Counts(), line, "+ 2;")),
    ];

    /// <summary>So many of each kind, spread evenly over the statements of the block.</summary>
    public static ImmutableArray<TextMutant> Of(string text, string functionBlock, int mostOfAKind)
    {
        string[] lines = text.Split('\n');
        int start = Array.FindIndex(lines, line => line.StartsWith($"FUNCTION_BLOCK {functionBlock}", StringComparison.Ordinal));
        int end = Array.FindIndex(lines, start, line => line.StartsWith("END_FUNCTION_BLOCK", StringComparison.Ordinal));
        int body = 1 + Array.FindLastIndex(lines, end, end - start, line => line.StartsWith("END_VAR", StringComparison.Ordinal));
        List<TextMutant> all = [];
        foreach ((string name, Func<string, string> change) in OfALine)
        {
            TextMutant[] kind =
            [
                .. Enumerable.Range(body, end - body).Where(index => !lines[index].StartsWith("(*", StringComparison.Ordinal) && change(lines[index]) != lines[index])
                    .Select(index => new TextMutant(name, index + 1 - start, lines[index], change(lines[index]), With(lines, index, change(lines[index])))),
            ];
            all.AddRange(Spread(kind, mostOfAKind));
        }

        TextMutant[] swapped =
        [
            .. Enumerable.Range(body, end - body - 1).Where(index => IsAssignment(lines[index]) && IsAssignment(lines[index + 1]))
                .Select(index => new TextMutant(SwappedLines, index + 1 - start, lines[index], lines[index + 1], With(lines, index, $"{lines[index + 1]}\n{lines[index]}", 2))),
        ];
        all.AddRange(Spread(swapped, mostOfAKind));
        return [.. all];
    }

    private static IEnumerable<TextMutant> Spread(TextMutant[] mutants, int most) =>
        mutants.Length <= most ? mutants : Enumerable.Range(0, most).Select(index => mutants[index * mutants.Length / most]);

    private static string With(string[] lines, int index, string line, int replaced = 1) =>
        string.Join('\n', [.. lines[..index], line, .. lines[(index + replaced)..]]);

    private static bool IsAssignment(string line) => Assignment().IsMatch(line);

    private static string First(Regex words, string line, string others) => words.Replace(line, others, 1);

    private static string OneMore(string digits) => (long.Parse(digits, CultureInfo.InvariantCulture) + 1).ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(" OR ")]
    private static partial Regex Or();

    [GeneratedRegex(" AND ")]
    private static partial Regex And();

    [GeneratedRegex(@"\bNOT ")]
    private static partial Regex Not();

    [GeneratedRegex(">= ")]
    private static partial Regex AtLeast();

    [GeneratedRegex(@">= (\d+)")]
    private static partial Regex AtLeastNumber();

    [GeneratedRegex(@"(?<![:<>])= (\d+)")]
    private static partial Regex EqualNumber();

    [GeneratedRegex(@"T#(\d+)")]
    private static partial Regex Preset();

    [GeneratedRegex(@"\b(\w+) := (0|FALSE);")]
    private static partial Regex Reset();

    [GeneratedRegex(":= TRUE;")]
    private static partial Regex True();

    [GeneratedRegex(@"\+ 1;")]
    private static partial Regex Counts();

    [GeneratedRegex(@"^\s*\w+ := [^;]*;$")]
    private static partial Regex Assignment();
}
