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

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
