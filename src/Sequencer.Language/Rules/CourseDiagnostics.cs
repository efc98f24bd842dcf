using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>What an ordinary batch would run into on its course through the steps: codes and wording (SEQ0460 to SEQ0469).</summary>
internal static class CourseDiagnostics
{
    public static Diagnostic StepsChatter(Transition back, Transition there) => new(
        "SEQ0460",
        Severity.Warning,
        back.Span,
        $"steps {back.From[0]} and {there.From[0]} change places whenever this condition changes, and one of the two ways is always open",
        "waves and noise swing a reading or a switch many times a minute; each swing changes the step and starts its clocks anew",
        "leave a band between the two conditions, let each last with `stays`, or give the switch `on after` and `off after`")
    {
        Notes = [new RelatedNote(there.Span, "the way there")],
    };

    public static Diagnostic RestartElsewhere(RestartPoint point, Step step) => new(
        "SEQ0469",
        Severity.Error,
        point.Span,
        step.IsOfBatch
            ? FormattableString.Invariant($"a restart in step {step.Number} cannot go on at step {point.Step}: it does not lead back to step {step.Number} one step after the other")
            : FormattableString.Invariant($"step {step.Number} is not of the procedure: nothing is restarted in it"),
        "a restart repeats; what lies ahead, or in another branch, would be begun without what comes before it",
        "name the step itself, or one before it in the same branch");

    public static Diagnostic ReadingOfIdleLoop(DoseAction dose, Step step, Output pump) => new(
        "SEQ0461",
        Severity.Error,
        dose.Span,
        $"`{dose.Signal.Tag}` means something only with `{pump.Tag}` on, and step {step.Number} does not switch `{pump.Tag}` on",
        "the probe stands dry or in old liquid: when it is time to measure the dose holds the batch, every batch",
        $"add `{(pump.Kind == OutputKind.Valve ? "open" : "run")} {pump.Tag}` to the step");

    public static Diagnostic ContinuousDose(DriveAction drive, AnalogueInput reading, Step step) => new(
        "SEQ0462",
        Severity.Warning,
        drive.Span,
        $"step {step.Number} doses with `{drive.Output.Tag}` without a pause until `{reading.Tag}` is reached",
        "mixing and the probe lag behind: when the reading arrives, minutes of reagent are still on their way and the end point is overshot",
        $"write `dose {drive.Output.Tag} pulse … then wait … toward {reading.Tag} at …, at most …`");

    public static Diagnostic PulseBeyondBand(DoseAction dose, SourceSpan band, string each, string room) => new(
        "SEQ0463",
        Severity.Warning,
        dose.Span,
        $"a pulse that counts as a response moves `{dose.Signal.Tag}` by {each} or more; from the target to the far end of the band there is {room}",
        "near the end point each pulse that works carries the batch through its window",
        "shorten the pulse (or add a fine one) and ask for less response, or put the target farther from that end")
    {
        Notes = [new RelatedNote(band, "the band that the step waits for")],
    };

    public static Diagnostic GapBetweenWays(Transition second, Transition first) => new(
        "SEQ0464",
        Severity.Warning,
        second.Span,
        $"when both sides are equal, neither this way out of step {second.From[0]} nor the one above it is open",
        "readings have whole steps, so a reading exactly at the limit is no rarity: the batch then waits for the limit of the step",
        "write `<=` or `>=` in one of the two")
    {
        Notes = [new RelatedNote(first.Span, "the other way")],
    };

    public static Diagnostic LeftOnAtExit(SourceSpan exit, Output output) => new(
        "SEQ0465",
        Severity.Warning,
        exit,
        $"a batch can end here with `{output.Tag}` still {(output.Kind == OutputKind.Valve ? "open" : "running")}",
        "at rest it keeps what a step gave it last, so it stays on after the batch, with nobody watching",
        $"`{(output.Kind == OutputKind.Valve ? "close" : "stop")} {output.Tag}` in the last step of every way, or let it rest off");

    public static Diagnostic LineLeftDirty(Latch latch, Output dosing, Output flush) => new(
        "SEQ0466",
        Severity.Warning,
        WrittenWords.Name(latch.Span, latch.Name),
        $"a hold can leave `{latch.Name}` set, and nothing then {(flush.Kind == OutputKind.Valve ? "opens" : "runs")} `{flush.Tag}` or tells the operator",
        $"what `{dosing.Tag}` left in the line stands there for as long as the hold lasts; slurries set",
        $"let `{flush.Tag}` be `driven while holding` with a step for it, or raise an `alarm` that names `{latch.Name}`");

    public static Diagnostic TrueOnEntry(Transition way, Transition into) => new(
        "SEQ0467",
        Severity.Warning,
        way.Span,
        $"this is already true when step {way.From[0]} begins, so the step is over in one scan",
        "each way into the step asks for as much as the way out of it: what the step should do is never done",
        "ask for something that the step brings about, or for a time with `stays`")
    {
        Notes = [new RelatedNote(into.Span, "the way into the step")],
    };

    public static Diagnostic DoseWithoutMaximum(DriveAction drive, Step step) => new(
        "SEQ0468",
        Severity.Warning,
        drive.Span,
        $"step {step.Number} doses with `{drive.Output.Tag}` for as long as it lasts: nothing says the most that a batch may get",
        "with the step waiting for something else, reagent runs until the limit or until its tank is empty",
        $"write `dose {drive.Output.Tag} amount … once a batch`, or `for …`, or end it `until {drive.Output.Tag}.total >= …`");
}
