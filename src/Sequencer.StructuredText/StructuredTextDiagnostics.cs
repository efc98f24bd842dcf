using System.Globalization;
using Sequencer.Text;

namespace Sequencer.StructuredText;

/// <summary>
/// Every message of reading structured text, codes SEQ0701 to SEQ0749. Here: the text and its grammar; the
/// other part holds names, types and meaning.
/// </summary>
public static partial class StructuredTextDiagnostics
{
    public static Diagnostic UnexpectedCharacter(SourceSpan span) => Error(
        "SEQ0701",
        span,
        $"unexpected character `{Printable(span)}`",
        "the rest of the line cannot be read with certainty, so neither can what it does to the plant",
        "remove it, or put it inside a comment `(* ... *)`");

    public static Diagnostic UnterminatedComment(SourceSpan span) => Error(
        "SEQ0702",
        span,
        "this comment is never closed",
        "everything after it, to the end of the file, is taken for comment and does nothing",
        "close it with `*)` (or `*/` where it began with `/*`)");

    public static Diagnostic MalformedLiteral(SourceSpan span, string fault) => Error(
        "SEQ0703",
        span,
        $"`{span.Text}` is not a literal: {fault}",
        "a number that two readers can take in two ways is a setting nobody has reviewed",
        "write it as IEC 61131-3 has it: `123_456`, `16#FF`, `1.5`, `T#1m30s`, `TRUE`");

    public static Diagnostic MalformedIdentifier(SourceSpan span) => Error(
        "SEQ0704",
        span,
        $"`{span.Text}` is not a name",
        "two underscores together, or one at the end, are not allowed, since names that differ only there look alike in review",
        "keep single underscores, between letters and digits");

    public static Diagnostic Expected(SourceSpan span, string expected, string found) => Error(
        "SEQ0705",
        span,
        $"expected {expected}, found {found}",
        "the statement is left out of everything that follows until it can be read",
        $"write {expected} here, or look for a missing `;` or `END_` before this place");

    public static Diagnostic ReservedName(SourceSpan span) => Error(
        "SEQ0706",
        span,
        $"`{span.Text}` is a reserved word and cannot be a name",
        "the standard gives the word a meaning of its own, and compilers refuse or misread it as a name",
        "choose another name");

    public static Diagnostic NestedTooDeep(SourceSpan span, int limit) => Error(
        "SEQ0707",
        span,
        string.Create(CultureInfo.InvariantCulture, $"nested more than {limit} levels deep"),
        "nobody can review it, and the rest of the file is not read",
        "split it into several statements or blocks");

    public static Diagnostic NotSupportedYet(SourceSpan span, string construct) => Error(
        "SEQ0708",
        span,
        $"{construct} is standard structured text but not read yet",
        "a construct without a stated meaning cannot be compared with what was proved",
        "write it with plain variables, IF, CASE, loops and calls of blocks; spec/structured-text.md lists what is read");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static Diagnostic Warning(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Warning, span, message, reason, mend);

    private static string Printable(SourceSpan span) =>
        span.Text.Length == 1 && (char.IsControl(span.Text[0]) || char.IsSurrogate(span.Text[0]))
            ? string.Create(CultureInfo.InvariantCulture, $"U+{(int)span.Text[0]:X4}")
            : span.Text.ToString();
}
