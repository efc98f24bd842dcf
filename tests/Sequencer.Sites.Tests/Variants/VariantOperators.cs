using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>
/// The ways in which a program is broken. They know the forms of the lines, not the sites: every one is applied
/// everywhere it fits. They stand for slips that engineers make: a line forgotten, a contact or a comparison the
/// wrong way round, a decimal point out of place, the neighbouring device or step (common practice, no source).
/// </summary>
internal static partial class VariantOperators
{
    private static readonly string[] CanBeLeftOut = ["interlock", "permissive", "trip", "alarm", "start", "after", "open", "run", "dose", "limit", "go"];

    private static readonly Dictionary<string, string> Opposite = new(StringComparer.Ordinal)
    {
        ["blocked while"] = "blocked unless",
        ["blocked unless"] = "blocked while",
        ["starts only with"] = "starts only with not",
        ["when not"] = "when",
        ["and not"] = "and",
        ["until not"] = "until",
        [" < "] = " > ",
        [" > "] = " < ",
        [" >= "] = " <= ",
        [" <= "] = " >= ",
        ["safe closed"] = "safe open",
        ["safe stopped"] = "safe running",
        ["safe running"] = "safe stopped",
        ["emergency stopped"] = "emergency running",
    };

    public static ImmutableArray<VariantOperator> All { get; } =
    [
        new("line left out", line => CanBeLeftOut.Contains(line.Statement) ? [new BrokenLine("", null)] : []),
        new("clause left out", line => Replace(line, Clause(), _ => "")),
        new("part of a condition left out", line => [.. Replace(line, Before(), _ => " "), .. Replace(line, After(), _ => "")]),
        new("sense reversed", line => Replace(line, Sense(), match => Opposite[match.Value])),
        new("contact the other way", Contact),
        new("value ten times", line => line.Statement is "input" or "output" ? [] : Replace(line, Amount(), TenTimes)),
        new("device left out of a list", line => Replace(line, Listed(), _ => "")),
        new("neighbouring device", Neighbour),
        new("way to another step", OtherStep),
    ];

    private static IEnumerable<BrokenLine> Replace(ProgramLine line, Regex pattern, Func<Match, string> by)
    {
        foreach (Match match in pattern.Matches(line.Text))
        {
            string replacement = by(match);
            string change = replacement.Trim().Length == 0 ? $"`{match.Value.Trim()}`" : $"`{match.Value.Trim()}` to `{replacement.Trim()}`";
            yield return new BrokenLine(change, line.Text[..match.Index] + replacement + line.Text[(match.Index + match.Length)..]);
        }
    }

    private static IEnumerable<BrokenLine> Contact(ProgramLine line) =>
        line.Statement != "input" || !line.Text.Contains(" switch ", StringComparison.Ordinal) ? []
        : line.Text.Contains("normally closed", StringComparison.Ordinal) ? Replace(line, NormallyClosed(), _ => " switch ")
        : Replace(line, NormallyOpen(), _ => " switch normally closed ");

    private static string TenTimes(Match match)
    {
        string written = match.Groups[1].Value;
        int decimals = written.Contains('.', StringComparison.Ordinal) ? written.Length - written.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        decimal value = decimal.Parse(written, CultureInfo.InvariantCulture) * 10;
        return value.ToString($"F{decimals}", CultureInfo.InvariantCulture) + match.Groups[2].Value;
    }

    /// <summary>The next device of the same kind in the order of the program: the line above or below on a terminal list.</summary>
    private static IEnumerable<BrokenLine> Neighbour(ProgramLine line) =>
        line.Statement is "run" or "dose" && line.Motors.Length > 0 ? Replace(line, Driven(), match => Next(match, line.Motors))
        : line.Statement == "open" && line.Valves.Length > 1 ? Replace(line, Driven(), match => Next(match, line.Valves))
        : [];

    private static string Next(Match match, ImmutableArray<string> names) =>
        $"{match.Groups[1].Value} {names[(names.IndexOf(match.Groups[2].Value) + 1) % names.Length]}";

    private static IEnumerable<BrokenLine> OtherStep(ProgramLine line) => line.Statement is not ("go" or "limit") ? [] : Replace(line, Target(), match =>
    {
        int next = line.Steps.IndexOf(match.Groups[2].Value) + 1;
        return match.Groups[1].Value + (next < line.Steps.Length ? line.Steps[next] : "finish");
    });

    [GeneratedRegex(@" retained$| stays \d+ \w+| after the last pulse|, at most [\d.]+ L a batch|, no [\d.]+ pH in \d+ pulses|, [\d.]+ s within [\d.]+ pH(?=, then)| confirm .* within \d+ s| and reset\b| bad after \d+ s| usable only while .*| on after \d+ s| off after \d+ s| emergency stopped| while not \w+(?= +(emergency|held|confirm))| until .*| clear when .*(?= retained)|, \d+ s between|(?<=run \w+) after \d+ s|, restart begins with \d+ s wait|, else after .*")]
    private static partial Regex Clause();

    /// <summary>The part before an <c>and</c> or <c>or</c>.</summary>
    [GeneratedRegex(@"(?<=when|unless|while|from|or) (not )?[\w.]+( [<>=]+ [\w. ]+?)? (and|or) ")]
    private static partial Regex Before();

    /// <summary>The part after it, to the next or to the end of the condition.</summary>
    [GeneratedRegex(@" (and|or) (not )?[A-Z]\w+( usable| proved| [<>]=? [\d.]+ \w+)?(?= and| or| until| stays|$)")]
    private static partial Regex After();

    [GeneratedRegex(@"blocked while|blocked unless|starts only with|when not|and not|until not| < | > | >= | <= |safe closed|safe stopped|safe running|emergency stopped")]
    private static partial Regex Sense();

    [GeneratedRegex(@" switch normally closed ")]
    private static partial Regex NormallyClosed();

    [GeneratedRegex(@" switch (?!normally)")]
    private static partial Regex NormallyOpen();

    /// <summary>A number with its unit.</summary>
    [GeneratedRegex(@"(?<![\w.])(\d+(?:\.\d+)?)( (?:s|min|h|pH|L|m3|degC)\b)")]
    private static partial Regex Amount();

    [GeneratedRegex(@"(?<=^interlock .*)(?:\b[A-Z]+\d+\w*, |, [A-Z]+\d+\w*(?= +(blocked|exclusive)))")]
    private static partial Regex Listed();

    [GeneratedRegex(@"(run|dose|open) (\w+)")]
    private static partial Regex Driven();

    [GeneratedRegex(@"(go |and (?=\d))(\d+)")]
    private static partial Regex Target();
}
