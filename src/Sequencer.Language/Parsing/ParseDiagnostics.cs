using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>What can be wrong with the text of a line: SEQ0103 to SEQ0116.</summary>
internal static class ParseDiagnostics
{
    private const string Refused = "the checker cannot tell what the line asks of the plant, so it refuses the program instead of guessing";

    private static readonly FrozenDictionary<string, string> Lookalikes = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["\u00b5"] = "u",
        ["\u03bc"] = "u",
        ["\u00b0"] = "degC",
        ["\u2264"] = "<=",
        ["\u2265"] = ">=",
        ["\u2013"] = "-",
        ["\u2014"] = "--",
        ["\u2212"] = "-",
        ["\u201c"] = "\"",
        ["\u201d"] = "\"",
        ["\u201e"] = "\"",
        ["'"] = "\"",
        ["\u00b3"] = "3",
        ["\u2026"] = "..",
        ["\u00a0"] = "a plain blank",
        [";"] = "the end of the line",
        ["["] = "(",
        ["]"] = ")",
        ["{"] = "(",
        ["}"] = ")",
        ["#"] = "--",
        ["&"] = "and",
        ["|"] = "or",
        ["!"] = "not",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Those of them that stand for one sign of ours and nothing else, wherever they are.</summary>
    private static readonly FrozenDictionary<string, string> Signs = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["\u00b5"] = "u",
        ["\u03bc"] = "u",
        ["\u2264"] = "<=",
        ["\u2265"] = ">=",
        ["\u2013"] = "-",
        ["\u2212"] = "-",
        ["\u00b3"] = "3",
        ["\u2026"] = "..",
        ["\u00a0"] = " ",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static Diagnostic InvisibleCharacter(SourceSpan span, char character) => Error(
        "SEQ0103",
        span,
        $"an invisible character, U+{((int)character).ToString("X4", CultureInfo.InvariantCulture)}",
        "a reviewer would read something else than what the controller gets",
        "delete the character; a blank, a tab and the line's end are the only ones that may be unseen") with
    {
        Fix = char.GetUnicodeCategory(character) == UnicodeCategory.Format ? Fix.Delete(span, "delete the character") : null,
    };

    public static Diagnostic TextNotClosed(SourceSpan span) => Error(
        "SEQ0104",
        span,
        "this text is not closed",
        "what follows the text would be shown to the operator in place of being obeyed",
        "put a double quote at the end of the text; a text stands on one line");

    public static Diagnostic BracketNotClosed(SourceSpan span) => Error(
        "SEQ0105",
        span,
        "this `(` is not closed",
        "which facts belong together decides when a device is blocked or a step ends",
        "put `)` where the bracket ends");

    public static Diagnostic BracketNotOpened(SourceSpan span) => Error(
        "SEQ0106",
        span,
        "this `)` closes nothing",
        "which facts belong together decides when a device is blocked or a step ends",
        "delete it, or put `(` where the bracket begins");

    public static Diagnostic BracketsTooDeep(SourceSpan span) => Error(
        "SEQ0107",
        span,
        Text($"brackets are nested more than {ProgramLimits.BracketDepth} deep"),
        "nobody can review such a condition",
        "give parts of the condition a name with `latch`, or write several protections");

    public static Diagnostic LineTooLong(SourceSpan span) => Error(
        "SEQ0108",
        span,
        Text($"this statement is longer than {ProgramLimits.LineCharacters} characters"),
        "nobody can review such a statement",
        "split it, or close the bracket or drop the comma that makes it run on");

    public static Diagnostic UnusedCharacter(SourceSpan span, string character) => Error(
        "SEQ0109",
        span,
        $"the character `{character}` means nothing here",
        Refused,
        Lookalikes.TryGetValue(character, out string? plain) ? $"write `{plain}`" : "delete it; other alphabets and signs may stand in texts and comments only") with
    {
        Fix = Fix.Replace(span, Signs.GetValueOrDefault(character)),
    };

    public static Diagnostic Expected(SourceSpan span, ImmutableArray<string> expected, Token? found, string? near, string form) => Error(
        "SEQ0110",
        span,
        $"expected {Choice(expected)}, found {Describe(found)}",
        Refused,
        near is not null ? $"did you mean `{near}`? Such a line reads `{form}`"
        : expected.Contains("`after the last pulse`") && found?.Text is "and" or "or" ? $"put brackets around what has to last: `(A stays 20 s) {found?.Text} B`"
        : $"write it as `{form}`");

    public static Diagnostic UnknownStatement(SourceSpan span, string? near) => Error(
        "SEQ0111",
        span,
        $"no statement begins with `{Shortened(span)}`",
        Refused,
        near is null
            ? "begin the line with the word of a declaration (`input`, `output`, `interlock`, ...) or of a step (`open`, `run`, `dose`, `limit`, `go`, ...)"
            : $"did you mean `{near}`? Such a line reads `{StatementWords.Forms[near]}`");

    public static Diagnostic TooManyMistakes(SourceSpan span, int count) => Error(
        "SEQ0112",
        span,
        Text($"{count} lines are no statements; the rest of the file is not read"),
        "the file is probably no program at all, or damaged",
        "check that this is the right file; mend the first lines and check again");

    public static Diagnostic NumberRunsIntoWord(SourceSpan span) => Error(
        "SEQ0113",
        span,
        $"`{Shortened(span)}` is no number",
        "a number that is read otherwise than meant becomes a wrong limit or dose",
        "write digits with at most one point, then a blank, then the unit: `4.500 m3`; there are no exponents") with
    {
        Fix = Fix.Replace(span, WithBlank(span.Text.ToString())),
    };

    public static Diagnostic NumberTooLong(SourceSpan span) => Error(
        "SEQ0114",
        span,
        Text($"a number has at most {ProgramLimits.NumberDigits} digits"),
        "no instrument is that fine, and the controller's integers cannot hold it",
        "write fewer digits, or use a larger unit");

    public static Diagnostic ExpressionTooDeep(SourceSpan span) => Error(
        "SEQ0115",
        span,
        Text($"this condition is built up more than {ProgramLimits.ExpressionDepth} levels high"),
        "nobody can review such a condition",
        "write several shorter conditions");

    public static Diagnostic ClauseTwice(SourceSpan span, string keyword) => Error(
        "SEQ0116",
        span,
        $"`{keyword}` is given twice",
        "only one of the two could be obeyed, and a reader cannot tell which",
        "delete one of them");

    /// <summary>The number and its unit parted by a blank; null where no unit follows the digits.</summary>
    private static string? WithBlank(string written)
    {
        int digits = written.TakeWhile(character => char.IsAsciiDigit(character) || character == '.').Count();
        return UnitTable.Find(written[digits..]) is null ? null : $"{written[..digits]} {written[digits..]}";
    }

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Choice(ImmutableArray<string> expected) => expected.Length switch
    {
        0 => "another word",
        1 => expected[0],
        _ => string.Join(", ", expected[..^1]) + " or " + expected[^1],
    };

    private static string Describe(Token? found) => found switch
    {
        null => "the end of the line",
        { Kind: TokenKind.Text } => "a text",
        { IsKeyword: true } token => $"the keyword `{token.Text}`",
        { } token => $"`{(token.Text.Length > 40 ? token.Text[..40] + "..." : token.Text)}`",
    };

    private static string Shortened(SourceSpan span) =>
        span.Text.Length > 40 ? string.Concat(span.Text[..40], "...") : span.Text.ToString();
}
