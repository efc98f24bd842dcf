using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong inside the declaration of a protection or an alarm: SEQ0540 and up.</summary>
internal static class GuardDiagnostics
{
    public static Diagnostic GroupWithoutReset(SourceSpan span, string interlock) => Error(
        "SEQ0540",
        span,
        $"`{interlock}` is in a group, but lets go without a reset",
        "a group says whose reset and first-out count; this block asks for neither",
        "delete the group, or write `from … until … and reset`");

    public static Diagnostic AlarmIncomplete(SourceSpan span, string alarm, string missing) => Error(
        "SEQ0543",
        span,
        $"`{alarm}` does not say its {missing}",
        "an alarm that nobody knows how to answer, how soon, or what for, is noise in the moment that counts (IEC 62682)",
        "write `priority`, `consequence` and `response … within …`, or leave all three out for a mere message");

    public static Diagnostic DeadbandOfNoReading(SourceSpan span) => Error(
        "SEQ0544",
        span,
        "a deadband belongs to the comparison of one reading",
        "what the value must come back to cannot be told from a switch, a band or several facts",
        "write the alarm on one comparison such as `LT101 > 5.2 m3`, or use `off after`");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
