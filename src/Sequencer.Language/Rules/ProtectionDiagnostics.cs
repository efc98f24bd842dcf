using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes in interlocks, permissives, trips and requirements: codes and wording (SEQ0520 and up).</summary>
internal static class ProtectionDiagnostics
{
    public static Diagnostic ThresholdWithoutBand(Interlock interlock, Condition fact, string reading) => new(
        "SEQ0520",
        Severity.Warning,
        fact.Span,
        $"`{interlock.Name}` blocks and lets go at one value of `{reading}`",
        "a real reading is noisy: at the threshold the block comes and goes many times a minute and the device chatters",
        "write `from … until …` with a release well apart from the cause");

    public static Diagnostic ReleaseOverlapsCause(Interlock interlock, Condition release) => new(
        "SEQ0521",
        Severity.Error,
        release.Span,
        $"`{interlock.Name}` lets go while its cause can still hold",
        "the release lies on the wrong side of the cause or leaves no band between: the block ends as soon as it began, or chatters",
        "put the release on the healthy side, apart from the cause");

    public static Diagnostic ReleaseBandTooNarrow(Interlock interlock, Condition release, string band, string least) => new(
        "SEQ0522",
        Severity.Warning,
        release.Span,
        $"between cause and release of `{interlock.Name}` lie {band}, less than 1 % of the range ({least})",
        "noise and waves cross so narrow a band, and the device chatters",
        "widen the band (common practice, no source: 1 % of span for temperature, 2 % for pressure, 5 % for level and flow)");

    public static Diagnostic PermissiveAlone(Permissive permissive, Output output) => new(
        "SEQ0523",
        Severity.Error,
        permissive.Span,
        $"`{permissive.Name}` is all that guards `{output.Tag}`, and it looks only at the start",
        "what makes the start safe can be lost a second later; the reagent then runs on, for a permissive never stops anything",
        "write an interlock on the same condition; keep the permissive if the operator should hear why a start is refused");

    public static Diagnostic DosingWithoutInterlock(Output output) => new(
        "SEQ0524",
        Severity.Error,
        WrittenWords.Name(output.Span, output.Tag),
        $"`{output.Tag}` doses `{output.Delivery?.Reagent.Name}` and no interlock can stop it",
        "with the agitator stopped, the probe bad or the tank full the reagent runs on, in automatic and in manual",
        "write an interlock that blocks it unless mixing is proved and the reading is usable");

    public static Diagnostic DosingWithoutMixing(Output output, string agitators) => new(
        "SEQ0525",
        Severity.Warning,
        WrittenWords.Name(output.Span, output.Tag),
        $"`{output.Tag}` can dose with the agitator ({agitators}) not proved running",
        "unmixed reagent collects beside the probe or in a layer; it reacts all at once when the agitator starts",
        "block it `unless` the agitator's running switch is on");

    public static Diagnostic OpposingReagentsNotExclusive(Output first, Output second) => new(
        "SEQ0526",
        Severity.Error,
        WrittenWords.Name(second.Span, second.Tag),
        $"`{first.Tag}` and `{second.Tag}` bring reagents that oppose each other and nothing keeps them apart",
        "together they waste each other, heat the liquid, or set gas free",
        $"write `interlock … {first.Tag}, {second.Tag} exclusive, … between`");

    public static Diagnostic NothingDrivesInterlock(Interlock interlock) => new(
        "SEQ0527",
        Severity.Error,
        interlock.Condition.Span,
        $"nothing that happens during a batch can change the condition of `{interlock.Name}`",
        "it looks at settings only, which stay as they are from the start of the batch: the block is there always or never",
        "name the signal that shows the hazard");

    public static Diagnostic BlockForcesOn(SourceSpan span, string protection, Output output) => new(
        "SEQ0528",
        Severity.Error,
        span,
        $"`{protection}` blocks `{output.Tag}` to its safe value, which {(output.Safe.Last ? "is the last one" : "can be " + (output.Kind == OutputKind.Valve ? "open" : "running"))}",
        "a block gives the safe value; here that starts the device, or leaves it running, at the moment it should stop",
        "leave the output out of the protection, or give it a safe value that is off and demand it where it must run");

    public static Diagnostic TripBadSignalUnsaid(Trip trip, string reading) => new(
        "SEQ0529",
        Severity.Warning,
        trip.Span,
        $"`{trip.Name}` does not say what it does when `{reading}` is bad",
        "unsaid, it trips; that can be worse than the fault (vacuum under a coat, an agitator over solids)",
        "add `, if bad trip`, `, if bad hold` or `, if bad alarm`");

    public static Diagnostic TripOnlyAlarms(Trip trip) => new(
        "SEQ0530",
        Severity.Warning,
        trip.Span,
        $"`{trip.Name}` trips nothing: its reaction is an alarm and no condition reads it",
        "it looks like a protection in every list, and the plant runs on",
        "let it hold, stop, abort or trip the emergency, or write it as an `alarm`");

    public static Diagnostic RequirementUntouched(RequirementClause requirement) => new(
        "SEQ0531",
        Severity.Warning,
        requirement.Span,
        $"no interlock, exclusion, permissive, trip or latch has to do with requirement `{requirement.Name}`",
        "if it holds, then only because the steps happen to; in manual, or after the next change, nothing keeps it",
        "write the protection that keeps it");

    public static Diagnostic EmergencyStopWithoutTrip(SwitchInput input) => new(
        "SEQ0532",
        Severity.Error,
        WrittenWords.Name(input.Span, input.Tag),
        $"no trip takes `{input.Tag}` to the emergency",
        "the hardware cuts the drives, but the program does not know: when the button is pulled again they start with whatever the step demands",
        $"write `trip … when {input.Tag} then emergency`");

    public static Diagnostic GroupWithoutMember(ProtectionGroup group) => new(
        "SEQ0541",
        Severity.Warning,
        group.Span,
        $"nothing is in the group `{group.Name}`",
        "its reset would reset nothing; whoever presses it believes that something was reset",
        $"add `, group {group.Name}` to the trips and interlocks that belong to it, or delete it");

    public static Diagnostic DelayBeyondReaction(SourceSpan delayed, string protection, string delay, string requirement, string within) => new(
        "SEQ0542",
        Severity.Error,
        delayed,
        $"`{protection}` waits {delay} before it acts, but `{requirement}` demands an answer within {within}",
        "while the protection still waits, the time that the plant allows is over",
        "shorten `on after`, or allow more time if the process does");

    public static Diagnostic AlarmWithoutDeadband(OperatorAlarm alarm, string reading) => new(
        "SEQ0545",
        Severity.Warning,
        WrittenWords.Name(alarm.Span, alarm.Name),
        $"`{alarm.Name}` comes and goes at one value of `{reading}`",
        "a real reading is noisy: at the threshold the alarm chatters, and is not believed any more",
        "add `deadband`, `on after` or `off after`");

    public static Diagnostic DelayBeyondResponse(OperatorAlarm alarm, string delay, string within) => new(
        "SEQ0546",
        Severity.Error,
        WrittenWords.Name(alarm.Span, alarm.Name),
        $"`{alarm.Name}` waits {delay} before it is raised, and must be answered within {within}",
        "the time that the operator has begins with the event, not with the message: it is over before he knows",
        "shorten `on after`; `within` is all of the time from the event to the consequence");

    public static Diagnostic VoteNeverRead(Vote vote) => new(
        "SEQ0556",
        Severity.Warning,
        vote.Span,
        $"no condition reads the vote `{vote.Name}`",
        "the instruments vote and nothing acts on it; a protection was meant that is not there",
        "name it in a trip or an interlock, or delete it");

    public static Diagnostic FailureHoldsPair(DutyPair pair, Output member) => new(
        "SEQ0564",
        Severity.Warning,
        WrittenWords.Name(pair.Span, member.Tag),
        $"the failure of `{member.Tag}` stops the unit before the standby of `{pair.Name}` can help",
        "the discrepancy of the device asks for more than an alarm, so the batch waits although the other one runs",
        $"write `confirm … within … else alarm` at `{member.Tag}`");

    public static Diagnostic NeedsOwnProof(SourceSpan span, string protection, Output output) => new(
        "SEQ0533",
        Severity.Error,
        span,
        $"`{protection}` lets `{output.Tag}` start only once `{output.Tag}` is proved",
        "the device would have to be on before it may be switched on: it never starts",
        "name what must be so before the start; the device's own confirmation has its discrepancy already");

    public static Diagnostic ProtectionsInCircle(SourceSpan span, string protection, Output blocked, Output seen) => new(
        "SEQ0565",
        Severity.Error,
        span,
        blocked.Tag == seen.Tag
            ? $"`{protection}` looks at `{seen.Tag}` to decide what `{seen.Tag}` does"
            : $"`{protection}` looks at `{seen.Tag}` to decide what `{blocked.Tag}` does, and `{seen.Tag}` depends on `{blocked.Tag}` already",
        "protections see the outputs of the same scan: each would have to be decided before the other, and nobody has said which of them wins",
        blocked.Tag == seen.Tag
            ? "name what is so in the plant, such as a position switch"
            : $"keep one of the lines; to say which wins, write `{blocked.Tag}, {seen.Tag} exclusive`: the first one does");
}
