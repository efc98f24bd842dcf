using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong with how statements stand together: SEQ0120 to SEQ0130.</summary>
internal static class StructureDiagnostics
{
    public static Diagnostic NoProgram(SourceSpan span) => Error(
        "SEQ0120",
        span,
        "the file holds no program",
        "nothing would be controlled",
        "begin with `language 1`, then `unit NAME \"title\"`");

    public static Diagnostic LanguageFirst(SourceSpan span) => Error(
        "SEQ0121",
        span,
        "a program begins with `language 1`",
        "a later version of the language may read the same words otherwise",
        "put `language 1` before everything else");

    public static Diagnostic UnknownVersion(SourceSpan span) => Error(
        "SEQ0122",
        span,
        $"there is no version `{span.Text}` of the language here",
        "words of another version may mean something else",
        "write `language 1`, or check with a newer tool");

    public static Diagnostic UnitMissing(SourceSpan span) => Error(
        "SEQ0123",
        span,
        "it is not said which unit this program is for",
        "alarms, records and the controller's variables carry the unit's name",
        "write `unit NAME \"title\"` after `language 1`");

    public static Diagnostic OnlyOnce(SourceSpan span, string statement, SourceSpan first) => Error(
        "SEQ0124",
        span,
        $"`{statement}` may be written only once here",
        "only one of the two could be obeyed, and a reader cannot tell which",
        "delete one of them") with
    {
        Notes = [new RelatedNote(first, "the first one")],
        Fix = IsRepeated(span, statement, first) ? Fix.DeleteStatement(span) : null,
    };

    public static Diagnostic Misplaced(SourceSpan span, string statement, string where) => Error(
        "SEQ0125",
        span,
        $"`{statement}` stands in the wrong place: {where}",
        "it would belong to another step than the one meant, or to none",
        "move the line");

    public static Diagnostic ProcedureMissing(SourceSpan span) => Error(
        "SEQ0126",
        span,
        "there is no `procedure`",
        "a batch would have no step to begin with",
        "write `procedure`, and the steps below it");

    public static Diagnostic NoStep(SourceSpan span, string section) => Error(
        "SEQ0127",
        span,
        section == "procedure" ? "the procedure has no step" : $"`{section}` has no step",
        section == "procedure" ? "a batch would have no step to begin with" : "a reader would expect that something is done in this state; nothing is",
        section == "procedure" ? "write a step below: `step 10 \"Fill\"`" : $"write a step below, or take `{section}` out: the state then lasts one scan");

    public static Diagnostic LimitMissing(SourceSpan span, int step) => Error(
        "SEQ0128",
        span,
        Text($"step {step} has no time limit"),
        "when a valve sticks or a probe fails the step would wait for ever, with pumps running",
        "add a line such as `limit 30 min then hold \"Filling slow\"`");

    public static Diagnostic MixedJunction(SourceSpan span) => Error(
        "SEQ0129",
        span,
        "`and` and `or` stand in one condition without brackets",
        "two readers would group it differently, and one of the two groups blocks or trips otherwise than meant",
        "put brackets around the part that belongs together");

    public static Diagnostic StaysBesideOr(SourceSpan span) => Error(
        "SEQ0130",
        span,
        "`stays` after `or` needs brackets",
        "whether one fact or either of them has to last is read differently by different people",
        "write `(A or B) stays 20 s`, or `A or (B stays 20 s)`");

    /// <summary>The same words a second time; a heading of steps is none, since the steps below it would go elsewhere.</summary>
    private static bool IsRepeated(SourceSpan span, string statement, SourceSpan first) =>
        statement != "procedure" && Sections.All.All(state => Sections.Word(state) != statement)
        && span.Text.StartsWith(statement, StringComparison.Ordinal) && span.Text.SequenceEqual(first.Text);

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
