using System.Text.RegularExpressions;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>A token or a comment of a text, as far as a rough cut tells, at its place.</summary>
internal readonly partial record struct FuzzToken(string Text, int Start)
{
    public int End => Start + Text.Length;

    public bool IsNumber => char.IsAsciiDigit(Text[0]);

    public bool IsName => char.IsAsciiLetter(Text[0]);

    public static List<FuzzToken> Of(string text) => [.. Token().Matches(text).Select(match => new FuzzToken(match.Value, match.Index))];

    [GeneratedRegex("""
        --.*|"[^"\n]*"|%[A-Z]+[\d.]+|de-energised|[A-Za-z][\w/]*|\d+oo\d+|\d+(\.\d+)?|\.\.|<=|>=|[^\s]
        """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Token();
}
