using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Mistakes in counts, codes SEQ0350 to SEQ0353.</summary>
internal static class CountDiagnostics
{
    public static Diagnostic SetOutside(SourceSpan span, string count, string range) => Error(
        "SEQ0350",
        span,
        $"`{count}` is set to a value outside its range, {range}",
        "a count stays in its range: it would show another value than the one written here",
        "set it to a value of its range, or widen the range");

    public static Diagnostic StepBeyondRange(SourceSpan span, string count, string range) => Error(
        "SEQ0351",
        span,
        $"one step of `{count}` is more than its whole range, {range}",
        "the count would stand at an end of its range after the first step and tell nothing",
        "correct the step, or widen the range to what the count has to show");

    public static Diagnostic WindowOnlyAdds(SourceSpan span) => Error(
        "SEQ0352",
        span,
        "a count over a time begins at 0, only adds, and is not set",
        "what was counted leaves by itself when it is older than the time; anything else would break the sum of its parts",
        "write the range from 0 with `adds` and leave out `set to`, or leave out `over`");

    public static Diagnostic NeverRead(SourceSpan span, string count) => new(
        "SEQ0353",
        Severity.Warning,
        span,
        $"nothing reads the count `{count}`",
        "it has no effect: what it was to limit or to show is missing",
        $"compare `{count}` in a condition, record it, or delete it");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
