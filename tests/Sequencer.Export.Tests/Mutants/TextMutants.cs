using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Sequencer.Export.Tests.Mutants;

/// <summary>Single changes of exported text, as a slip of the hand would make them in a review.</summary>
internal static partial class TextMutants
{
    private const string SwappedLines = "two statements swapped";
    private const string SwappedBranches = "two branches of an IF swapped";

    /// <summary>Of the further kinds there are many; a few of each are tried.</summary>
    private const int FewerOfFurther = 4;

    private static readonly ImmutableArray<(string Name, Func<string, string> Change)> OfALine =
    [
        ("AND for OR", line => First(Or(), line, " AND ")),
        ("OR for AND", line => First(And(), line, " OR ")),
        ("a NOT left out", line => First(Not(), line, "")),
        ("> for >=", line => First(AtLeast(), line, "> ")),
        ("a limit one more", line => AtLeastNumber().Replace(line, match => $">= {More(match.Groups[1].Value, 1)}", 1)),
        ("another value compared with", line => EqualNumber().Replace(line, match => $"= {More(match.Groups[1].Value, 1)}", 1)),
        ("a longer timer", line => Preset().Replace(line, match => $"T#{More(match.Groups[1].Value, 1)}", 1)),
        ("a reset left out", line => Reset().Replace(line, match => $"{match.Groups[1].Value} := {match.Groups[1].Value};", 1)),
        ("FALSE for TRUE", line => First(True(), line, ":= FALSE;")),
        ("counts by two", line => First(Counts(), line, "+ 2;")),
    ];

    private static readonly ImmutableArray<(string Name, Func<string, string> Change)> FurtherOfALine =
    [
        ("a NOT too many", line => Condition().Replace(line, match => $"{match.Groups[1].Value} NOT ({match.Groups[2].Value}) THEN", 1)),
        ("<= for <", line => First(Less(), line, " <= ")),
        ("< for <=", line => First(AtMost(), line, " < ")),
        ("a limit one less", line => ComparedNumber().Replace(line, match => $"{match.Groups[1].Value} {More(match.Groups[2].Value, -1)}", 1)),
        ("another value assigned", line => AssignedNumber().Replace(line, match => $":= {More(match.Groups[1].Value, 1)};", 1)),
        ("a shorter timer", line => Preset().Replace(line, match => $"T#{More(match.Groups[1].Value, -1)}", 1)),
        ("TRUE for FALSE", line => First(False(), line, ":= TRUE;")),
        ("a statement left out", line => First(Assignment(), line, "")),
    ];

    /// <summary>So many of each kind, and fewer of the further kinds, spread evenly over the statements of the block.</summary>
    public static ImmutableArray<TextMutant> Of(string text, string functionBlock, int mostOfAKind)
    {
        string[] lines = text.Split('\n');
        int start = Array.FindIndex(lines, line => line.StartsWith($"FUNCTION_BLOCK {functionBlock}", StringComparison.Ordinal));
        int end = Array.FindIndex(lines, start, line => line.StartsWith("END_FUNCTION_BLOCK", StringComparison.Ordinal));
        int body = 1 + Array.FindLastIndex(lines, end, end - start, line => line.StartsWith("END_VAR", StringComparison.Ordinal));
        List<TextMutant> all = [];
        AddLines(OfALine, mostOfAKind);
        TextMutant[] swapped =
        [
            .. Enumerable.Range(body, end - body - 1).Where(index => IsAssignment(lines[index]) && IsAssignment(lines[index + 1]))
                .Select(index => new TextMutant(SwappedLines, index + 1 - start, lines[index], lines[index + 1], With(lines, index, $"{lines[index + 1]}\n{lines[index]}", 2))),
        ];
        all.AddRange(Spread(swapped, mostOfAKind));
        AddLines(FurtherOfALine, mostOfAKind / FewerOfFurther);
        AddLines(OfNames(string.Join('\n', lines[..body]), string.Join('\n', lines[start..body])), mostOfAKind / FewerOfFurther);
        all.AddRange(Spread([.. Branches(lines, start, body, end)], mostOfAKind / FewerOfFurther));
        return [.. all];

        void AddLines(ImmutableArray<(string Name, Func<string, string> Change)> kinds, int most)
        {
            foreach ((string name, Func<string, string> change) in kinds)
            {
                TextMutant[] kind =
                [
                    .. Enumerable.Range(body, end - body).Where(index => !lines[index].StartsWith("(*", StringComparison.Ordinal) && change(lines[index]) != lines[index])
                        .Select(index => new TextMutant(name, index + 1 - start, lines[index], change(lines[index]), With(lines, index, change(lines[index])))),
                ];
                all.AddRange(Spread(kind, most));
            }
        }
    }

    /// <summary>Another value of an enumerated type, another variable of the same type: the next in the order of declaration, the first after the last.</summary>
    private static ImmutableArray<(string Name, Func<string, string> Change)> OfNames(string declared, string block)
    {
        Dictionary<string, string> values = [];
        foreach (Match type in Enumerated().Matches(declared))
        {
            Chain([.. type.Groups[1].Value.Split(',').Select(value => value.Trim())], values);
        }

        Dictionary<string, string> variables = [];
        foreach (IGrouping<string, Match> type in Declared().Matches(block).GroupBy(match => match.Groups[2].Value))
        {
            Chain([.. type.Select(match => match.Groups[1].Value)], variables);
        }

        return
        [
            ("another value of its type", line => Value().Replace(line, match => $"= {values.GetValueOrDefault(match.Groups[1].Value, match.Groups[1].Value)}", 1)),
            ("another variable of its type", line => ReadName().Replace(line, match => variables.GetValueOrDefault(match.Value, match.Value), 1)),
        ];
    }

    private static void Chain(string[] names, Dictionary<string, string> next)
    {
        for (int index = 0; index < names.Length; index++)
        {
            next[names[index]] = names[(index + 1) % names.Length];
        }
    }

    /// <summary>A branch that begins with ELSIF before the one that is before it, with the statements of both.</summary>
    private static IEnumerable<TextMutant> Branches(string[] lines, int start, int body, int end)
    {
        for (int first = body; first < end; first++)
        {
            string indent = lines[first][..^lines[first].TrimStart().Length];
            int second = lines[first].TrimStart().StartsWith("ELSIF ", StringComparison.Ordinal) ? Next(first) : end;
            int rest = second < end && lines[second].StartsWith($"{indent}ELSIF ", StringComparison.Ordinal) ? Next(second) : end;
            if (rest < end)
            {
                string[] other = [.. lines[..first], .. lines[second..rest], .. lines[first..second], .. lines[rest..]];
                yield return new TextMutant(SwappedBranches, first + 1 - start, lines[first], lines[second], string.Join('\n', other));
            }

            int Next(int from) => Array.FindIndex(lines, from + 1, line => line.StartsWith($"{indent}ELS", StringComparison.Ordinal) || line.StartsWith($"{indent}END_IF", StringComparison.Ordinal));
        }
    }

    private static IEnumerable<TextMutant> Spread(TextMutant[] mutants, int most) =>
        mutants.Length <= most ? mutants : Enumerable.Range(0, most).Select(index => mutants[index * mutants.Length / most]);

    private static string With(string[] lines, int index, string line, int replaced = 1) =>
        string.Join('\n', [.. lines[..index], line, .. lines[(index + replaced)..]]);

    private static bool IsAssignment(string line) => Assignment().IsMatch(line);

    private static string First(Regex words, string line, string others) => words.Replace(line, others, 1);

    private static string More(string digits, int more) => (long.Parse(digits, CultureInfo.InvariantCulture) + more).ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(" OR ")]
    private static partial Regex Or();

    [GeneratedRegex(" AND ")]
    private static partial Regex And();

    [GeneratedRegex(@"\bNOT ")]
    private static partial Regex Not();

    [GeneratedRegex(">= ")]
    private static partial Regex AtLeast();

    [GeneratedRegex(" < ")]
    private static partial Regex Less();

    [GeneratedRegex(" <= ")]
    private static partial Regex AtMost();

    [GeneratedRegex("(IF) (.*) THEN$")]
    private static partial Regex Condition();

    [GeneratedRegex(@"(>=|<=|<|>) (\d+)")]
    private static partial Regex ComparedNumber();

    [GeneratedRegex(@":= (\d+);")]
    private static partial Regex AssignedNumber();

    [GeneratedRegex(":= FALSE;")]
    private static partial Regex False();

    [GeneratedRegex(@":\s*\(([^():]*)\);")]
    private static partial Regex Enumerated();

    [GeneratedRegex(@"^\s+(\w+)\s*:\s*([^:;]+?)\s*(?::=[^;]*)?;", RegexOptions.Multiline)]
    private static partial Regex Declared();

    [GeneratedRegex(@"= (\w+)\b")]
    private static partial Regex Value();

    /// <summary>The first name on the right of an assignment or in a condition that is no word of the language.</summary>
    [GeneratedRegex(@"(?<=(?::= |IF )\W*(?:NOT \W*)?)\b(?!NOT\b|MIN\b|TRUE\b|FALSE\b|\d)\w+\b")]
    private static partial Regex ReadName();

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
