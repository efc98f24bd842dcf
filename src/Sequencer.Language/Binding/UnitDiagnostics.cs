using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Mistakes between the units of a site, codes SEQ0222 to SEQ0239.</summary>
internal static class UnitDiagnostics
{
    public static Diagnostic UnknownUnit(SourceSpan span, string unit, string? near, Symbol? own) => Error(
        "SEQ0222",
        span,
        $"there is no unit `{unit}` on the site" + (near is null ? "" : $"; did you mean `{near}`?"),
        "what the unit waits for would never come, and what it must keep apart from would not be watched",
        near is not null ? $"write `{near}`"
        : own is not null ? $"`{unit}` is {own.Kind.InWords()} of this unit: ask it without a point"
        : "name a unit whose program stands in `programs:` of `site.yaml`");

    public static Diagnostic UnknownElsewhere(SourceSpan span, string unit, string name, string? near) => Error(
        "SEQ0223",
        span,
        $"unit `{unit}` declares no `{name}`" + (near is null ? "" : $"; did you mean `{near}`?"),
        "the condition would speak of nothing, and never of what was meant in the other unit",
        near is null ? $"name something that `{unit}` declares, or publish it there with `fact {name} \"...\" when ...`" : $"write `{unit}.{near}`");

    public static Diagnostic NotPublished(SourceSpan span, string unit, Symbol symbol) => Error(
        "SEQ0224",
        span,
        $"`{symbol.Name}` of unit `{unit}` is {symbol.Kind.InWords()}, which other units do not see",
        "units see each other's signals, outputs, latches, trips, steps, states and published facts; the rest is each unit's own",
        $"publish what is meant in `{unit}` with `fact NAME \"...\" when ...` and ask for that") with
    {
        Notes = [new RelatedNote(symbol.Span, $"`{symbol.Name}` is declared here")],
    };

    public static Diagnostic ProofOfAnother(SourceSpan span, string unit, Symbol symbol) => Error(
        "SEQ0225",
        span,
        $"whether `{symbol.Name}` of unit `{unit}` is proved is not seen by other units",
        "the switches that prove it are judged against the command in the unit's own scan",
        $"ask for the switch, or publish it in `{unit}` with `fact NAME \"...\" when {symbol.Name} proved`") with
    {
        Notes = [new RelatedNote(symbol.Span, $"`{symbol.Name}` is declared here")],
    };

    public static Diagnostic DrivenByAnother(SourceSpan span, string unit, Symbol symbol) => Error(
        "SEQ0226",
        span,
        $"`{symbol.Name}` belongs to unit `{unit}`: no other unit drives it",
        "two units that command one device work against each other, and neither one's protections hold alone",
        $"let `{unit}` drive it when a fact of this unit says so, or list it there as `shared` and claim that in the step") with
    {
        Notes = [new RelatedNote(symbol.Span, $"`{symbol.Name}` is declared here")],
    };

    public static Diagnostic TagOfTwoUnits(SourceSpan span, string tag, SourceSpan first) => Error(
        "SEQ0227",
        span,
        $"`{tag}` is declared in two units of the site",
        "a tag is one device or signal of the plant; the other one would have no name of its own on the drawing and in records",
        "correct the tag, or declare it in one unit and read it in the other with that unit's name before it") with
    {
        Notes = [new RelatedNote(first, "first declared here")],
    };

    public static Diagnostic CircularFacts(SourceSpan span, string fact) => Error(
        "SEQ0228",
        span,
        $"the published fact `{fact}` leads back to itself",
        "it would hold because it held, with nothing in the plant to begin or end it",
        "take one of the facts out of the circle; what must be remembered is a `latch`");

    public static Diagnostic DrivenUnclaimed(SourceSpan span, int step, string output, string equipment) => Error(
        "SEQ0229",
        span,
        FormattableString.Invariant($"step {step} drives `{output}` without a claim on `{equipment}`"),
        "another unit may be using it; what is asked for without the claim has no effect",
        $"add a line `claim {equipment} limit ... then hold \"...\"` to the step");

    public static Diagnostic ClaimOnTheWayToRest(SourceSpan span, string equipment) => Error(
        "SEQ0230",
        span,
        $"`{equipment}` is claimed on the way to rest",
        "the section must end in time whatever other units do, and it would wait for one of them",
        "claim it in a step of the procedure; the claim is kept while the unit is held");

    public static Diagnostic SharedWithNobody(SourceSpan span, string equipment, int claimants) => Error(
        "SEQ0231",
        span,
        $"`{equipment}` is shared, but {(claimants == 0 ? "no unit claims it" : "only one unit claims it")}",
        "nothing is shared, or a unit uses the equipment without asking",
        "claim it in the steps of the units that use it, or delete the `shared` line");

    public static Diagnostic CircularClaims(SourceSpan span, string owned, string wanted) => Error(
        "SEQ0232",
        span,
        $"this waits for `{wanted}` while the unit may own `{owned}`, and other units wait the other way round",
        "each can wait for what the other owns; nothing moves until a limit runs out",
        "claim both in one step, or in the same order in all units");

    public static Diagnostic NotForShared(SourceSpan span, string output, string equipment, string what) => Error(
        "SEQ0233",
        span,
        $"`{output}` is part of the shared `{equipment}`: {what}",
        "whose batch, whose hold or whose choice would count is not clear while units take turns",
        "leave the output out of the `shared` line, or drive it with `run`, `open`, `stop` or `close`, for a time where needed");

    public static Diagnostic NotAskedBy(SourceSpan span, string asked, string asker) => Error(
        "SEQ0234",
        span,
        $"unit `{asked}` is not started by `{asker}`",
        "the step would ask nobody and wait until its limit; and whoever reads the other program must see who can start it",
        $"write `start asked by {asker}` in the program of `{asked}`");

    public static Diagnostic AskedByNoStep(SourceSpan span, string asker, string asked) => Error(
        "SEQ0235",
        span,
        $"no step of unit `{asker}` asks `{asked}` to start",
        "the unit waits for a start that never comes",
        $"write `ask {asked} to start` in a step of `{asker}`, or take `{asker}` out of this line");

    public static Diagnostic StartsItself(SourceSpan span, string unit) => Error(
        "SEQ0236",
        span,
        $"unit `{unit}` does not start itself",
        "while it asks it is in progress, and a unit in progress is not started",
        "name another unit; to go round again, lead the last step back with a count");

    public static Diagnostic StartedUnasked(SourceSpan span, string unit) => Error(
        "SEQ0237",
        span,
        $"no step of this unit asks `{unit}` to start, so it is never `started` for this unit",
        "the condition could never hold",
        $"write `ask {unit} to start` in a step, or ask for its state with `{unit} is Running`");

    public static Diagnostic AskOnTheWayToRest(SourceSpan span, string unit) => Error(
        "SEQ0238",
        span,
        $"`{unit}` is asked to start on the way to rest",
        "a unit that is being held, stopped or aborted begins nothing elsewhere",
        "ask in a step of the procedure");

    public static Diagnostic AnswerNotAwaited(SourceSpan span, int step, string unit) => new(
        "SEQ0239",
        Severity.Warning,
        span,
        FormattableString.Invariant($"step {step} asks `{unit}` to start and leaves without its answer"),
        "the request ends with the step: the other unit may not have started, and nobody knows",
        $"let a way out of the step wait for `{unit} started`");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
