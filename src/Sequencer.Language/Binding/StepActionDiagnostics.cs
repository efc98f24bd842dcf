using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong with what a step does, as far as names and amounts go: SEQ0240, SEQ0340 and up.</summary>
internal static class StepActionDiagnostics
{
    public static Diagnostic NoAmountDosed(SourceSpan span, string output, bool several) => Error(
        "SEQ0240",
        span,
        several ? $"which dose of `{output}` is meant? Several steps dose it by amount" : $"no step here doses an amount with `{output}`",
        "the step would go on before the reagent is given, or never",
        $"ask in the step that has the line `dose {output} amount ...`");

    public static Diagnostic EdgeNeeded(SourceSpan span) => Error(
        "SEQ0241",
        span,
        $"`at each` needs a moment, and `{span.Text}` lasts",
        "the device would be started again and again for as long as it lasts, and so never stop",
        $"write `at each rising ...` or `at each falling ...`");

    public static Diagnostic NoSuchAnswer(SourceSpan span, Symbol prompt, IEnumerable<string> answers) => Error(
        "SEQ0242",
        span,
        $"`{prompt.Name}` has no answer {span.Text}",
        "the operator could never give it, and what waits for it would wait for ever",
        $"write one of its answers: {string.Join(", ", answers.Select(answer => $"`\"{answer}\"`"))}") with
    {
        Notes = [new RelatedNote(prompt.Span, $"`{prompt.Name}` is asked here")],
        Fix = Fix.Replace(span, NearestWord.Only(span.Text.ToString(), answers.Select(answer => $"\"{answer}\""))),
    };

    public static Diagnostic NothingToRecord(SourceSpan span) => Error(
        "SEQ0343",
        span,
        $"a record keeps one measured value, one total or one setting, and `{span.Text}` is none",
        "the batch report would show a figure that no instrument and no operator gave",
        "name an input, a parameter or a total");

    public static Diagnostic OutsideOutput(SourceSpan span, string output, string range) => Error(
        "SEQ0344",
        span,
        $"`{span.Text}` is not always inside the range of `{output}`, {range}",
        "the card would cut the value off, and the drive would run at another speed than the one that was reviewed",
        "write a value inside the range, or correct the range");

    public static Diagnostic SlowerThanAStep(SourceSpan span, string step, int scanMilliseconds) => Error(
        "SEQ0345",
        span,
        FormattableString.Invariant($"this rate is less than one step of {step} in a scan of {scanMilliseconds} ms"),
        "the output could not move at all",
        "declare the range with more decimals, or allow a faster change");

    public static Diagnostic NoSetValue(SourceSpan span, string step) => Error(
        "SEQ0346",
        span,
        $"an output is set to an amount or to a parameter in steps of {step}, and `{span.Text}` is neither",
        "a value that is worked out would have to be rounded, and could leave the range",
        "write the amount, or a parameter whose decimals fit");

    public static Diagnostic FollowsWithoutPulses(SourceSpan span, string output) => Error(
        "SEQ0340",
        span,
        $"`{output}` follows a total that grows little by little, and no pulse is written",
        "the pump would start and stop with every scan that owes a little more, and wear out",
        "write the pulse that it gives when so much is due, such as `in pulses of 5 s`");

    public static Diagnostic PulsesOfNothing(SourceSpan span) => Error(
        "SEQ0341",
        span,
        "pulses are for a total that grows during the dose; this amount is known when the dose begins",
        "the rest of the amount that fills no whole pulse would never be given",
        "leave `in pulses of` out");

    public static Diagnostic ProportionToAmount(SourceSpan span) => Error(
        "SEQ0342",
        span,
        $"a dose is in proportion to one measured volume, one total or one setting, and `{span.Text}` is none",
        "the share would be of a figure that the controller does not have",
        "name a volume input, a parameter or a total; a fixed amount is `amount 3.0 L once a batch`");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
