using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes inside steps, in conditions and in doses: codes and wording (SEQ0415 to SEQ0430).</summary>
internal static class ProcedureDiagnostics
{
    public static Diagnostic ConflictingDrives(StepAction second, StepAction first, string output, int step, int otherStep) => new(
        "SEQ0415",
        Severity.Error,
        second.Span,
        step == otherStep
            ? $"step {step} drives `{output}` in two ways at once"
            : $"steps {otherStep} and {step} can be active together and drive `{output}` differently",
        "off wins over on, and pulses of two doses mix: one of the two lines does not do what it says, and nobody sees it",
        "drive the output from one of them, or write conditions that exclude each other")
    {
        Notes = [new RelatedNote(first.Span, "the other one")],
    };

    public static Diagnostic UnreachableAlternative(Transition way) => new(
        "SEQ0416",
        Severity.Error,
        way.Span,
        "this way is never taken: whenever its condition holds, one written above it holds too",
        "of alternatives the first true one wins, so what this line should catch goes the other way",
        "write the narrower condition first, or make the conditions exclude each other");

    public static Diagnostic NeverTrue(Condition condition) => new(
        "SEQ0417",
        Severity.Error,
        condition.Span,
        "this condition is never true while its signals are good",
        "its parts contradict each other, so what it should start, stop or guard never happens",
        "look for `and` where `or` is meant, a `not` too many, or limits the wrong way round");

    public static Diagnostic AlwaysTrue(Condition condition) => new(
        "SEQ0418",
        Severity.Error,
        condition.Span,
        "this condition is always true while its signals are good",
        "one of its parts holds whatever happens, so it decides nothing",
        "look for `or` where `and` is meant, a `not` too many, or limits the wrong way round");

    public static Diagnostic EdgeOfConstant(EdgeFact edge) => new(
        "SEQ0419",
        Severity.Error,
        edge.Span,
        $"`{(edge.Rising ? "rising" : "falling")}` of a condition that never changes",
        "an edge needs a change; this one never comes, and what waits for it waits for ever",
        "name a condition that can be true and can be false");

    public static Diagnostic StaysBelowScan(StaysFact stays, int scanMilliseconds) => new(
        "SEQ0420",
        Severity.Warning,
        stays.Span,
        $"`stays {Wording.Time(stays.Time)}` is shorter than one scan, {scanMilliseconds} ms",
        "the controller looks once a scan; a single noisy reading or a bouncing contact would count",
        "write a time of several scans, or leave `stays` out");

    public static Diagnostic WaitBelowScan(DoseAction dose, int scanMilliseconds) => new(
        "SEQ0421",
        Severity.Error,
        dose.Span,
        $"the wait of {Wording.Time(dose.Wait)} between pulses of `{dose.Output.Tag}` is shorter than one scan, {scanMilliseconds} ms",
        "the next pulse is decided before the last one is mixed in and seen by the probe, so the end point is overshot",
        "wait at least the dead time and three times the lags of mixing and probe (common practice, no source)");

    public static Diagnostic MaximumBelowPulse(DoseAction dose, string maximum, string pulse) => new(
        "SEQ0424",
        Severity.Error,
        dose.Span,
        $"the maximum, {maximum}, is less than one pulse, {pulse}",
        "the first pulse would pass the most that a batch may get, so the dose can never begin",
        "shorten the pulse or correct the maximum");

    public static Diagnostic MaximumOutOfReach(DoseAction dose, string maximum, string possible) => new(
        "SEQ0425",
        Severity.Warning,
        dose.Span,
        $"the maximum, {maximum}, is far more than the doses with `{dose.Output.Tag}` can give before the limits of their steps, {possible}",
        "a maximum that cannot be reached protects nothing: a frozen probe is fed until the limit",
        "set the maximum from the expected need (common practice, no source: 1.5 to 1.8 times), below what does harm");

    public static Diagnostic FinePulseNotFiner(DoseAction dose, Duration fine) => new(
        "SEQ0426",
        Severity.Error,
        dose.Span,
        $"near the target the pulse becomes {Wording.Time(fine)}, not shorter than {Wording.Time(dose.Pulse)}",
        "the curve is steepest near the end point: the larger pulse there carries the batch past it",
        "exchange the two times, or leave the second one out");

    public static Diagnostic FineBandTooWide(DoseAction dose, string band) => new(
        "SEQ0427",
        Severity.Warning,
        dose.Span,
        $"the fine pulse begins {band} from the target, farther than `{dose.Signal.Tag}` can be from it",
        "the coarse pulse is never given, and the dose takes far longer than meant",
        "write a smaller distance (common practice, no source: 1 to 1.5 pH)");

    public static Diagnostic DoseEndsShortOfBand(DoseAction dose, SourceSpan band, string gap) => new(
        "SEQ0428",
        Severity.Error,
        dose.Span,
        $"the dose stops at its target, {gap} short of the band that the step waits for",
        "at the target the dose rests; the band is never reached and the step runs into its limit",
        "put the target inside the band")
    {
        Notes = [new RelatedNote(band, "the band that the step waits for")],
    };

    public static Diagnostic LimitBelowOtherBranch(Step step, int other, Duration there, Duration here) => new(
        "SEQ0429",
        Severity.Warning,
        step.Limit.Span,
        $"step {step.Number} waits for step {other}, expected {Wording.Time(there)} after the branches open; its own limit is over after {Wording.Time(here)}",
        "the branch that is ready first always runs into its limit while it waits in the join",
        "lengthen the limit of the step that waits, or the expected times are wrong");

    public static Diagnostic DelayBeyondLimit(DriveAction drive, Step step) => new(
        "SEQ0430",
        Severity.Error,
        drive.Span,
        $"`{drive.Output.Tag}` is driven {Wording.Time(drive.After)} after the step begins, not before its limit, {Wording.Time(step.Limit.Time)}",
        "the limit ends the step first, so the output is never driven",
        "shorten the delay or lengthen the limit");
}
