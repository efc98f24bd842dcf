using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Mistakes in counts, in what is real beside a reading and in calibration, codes SEQ0350 to SEQ0356.</summary>
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

    public static Diagnostic RealOffResolution(SourceSpan span, string reading, string resolution) => Error(
        "SEQ0354",
        span,
        $"`{reading}` comes in steps of {resolution}, and this is not on them",
        "what is real is compared with its reading: both are counted in the same steps",
        $"write amounts that are whole multiples of {resolution}");

    public static Diagnostic RealOutsideRequirement(SourceSpan span, string real, string reading) => Error(
        "SEQ0355",
        span,
        $"no controller knows `{real}`: it is what is truly so in the plant",
        "a program acts on what it is told; what is real is there for requirements about the plant itself",
        $"ask for its reading, `{reading}`, or move this to a `require`");

    public static Diagnostic CalibratedElsewhere(SourceSpan span, string reading) => Error(
        "SEQ0356",
        span,
        $"`{reading}` is another unit's reading, and is calibrated there",
        "whether the unit is at rest is known where the reading is declared",
        "write this line in the program that declares the input");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
