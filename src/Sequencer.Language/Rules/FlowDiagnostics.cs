using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes in the flow of steps: codes and wording (SEQ0401 to SEQ0414).</summary>
internal static class FlowDiagnostics
{
    public static Diagnostic UnreachableStep(Step step) => new(
        "SEQ0401",
        Severity.Error,
        step.Span,
        $"no way leads to step {step.Number}",
        "the step reads like part of the batch, but no batch ever comes to it; what it does on paper never happens in the tank",
        $"write a `go {step.Number} when …` in the step before it, or take the step out");

    public static Diagnostic JoinNeverOpened(Transition join, string steps) => new(
        "SEQ0402",
        Severity.Error,
        join.Span,
        $"steps {steps} are never active together, so this join never happens",
        "a join waits for all its steps at once; branches that no `go … and …` opened side by side are never there at once, and the batch stands still",
        "open the branches together with `go … and …`, or leave each step with its own `go`");

    public static Diagnostic JoinCanWaitForever(Transition join, int waiting, string missing) => new(
        "SEQ0403",
        Severity.Error,
        join.Span,
        $"step {waiting} can wait for ever in this join: the branch of step {missing} can end without it",
        "when the other branch finishes or turns off elsewhere, nothing brings its last step back; the batch stands still with its outputs as they are",
        "let every way through the other branch end in the step that the join names");

    public static Diagnostic StepEnteredTwice(SourceSpan way, int step) => new(
        "SEQ0404",
        Severity.Warning,
        way,
        $"step {step} can be entered here while it is still active from before",
        "its clock and its limit start again and the two branches become one unseen (IEC 60848: a step is active or not, never twice)",
        "join the branches before the way back, or give each branch its own steps");

    public static Diagnostic StepWithoutExit(Step step) => new(
        "SEQ0405",
        Severity.Error,
        step.Span,
        $"nothing leaves step {step.Number}: no `go`, no join, and its limit only alarms",
        "the batch stays in the step for ever, with the outputs of the step on",
        "write `go … when …`, name the step in a join, or let its limit hold or go on");

    public static Diagnostic StepLeftOnlyByLimit(Step step) => new(
        "SEQ0406",
        Severity.Warning,
        step.Span,
        $"only its limit ends step {step.Number}",
        "the limit is for what went wrong; here every batch runs into it, so its alarm says nothing and the batch is never completed",
        $"write the proper way on, for example `go … when at step {step.Number} stays …`");

    public static Diagnostic LimitLeadsBack(Step step) => new(
        "SEQ0407",
        Severity.Error,
        step.Limit.Span,
        $"the limit of step {step.Number} leads back to the step itself",
        "its clock starts anew each time, so the step has no limit at all: what it drives may run for ever",
        "let the limit hold, stop or abort, or go to another step");

    public static Diagnostic LimitOnlyAlarms(Step step, string outputs) => new(
        "SEQ0408",
        Severity.Warning,
        step.Limit.Span,
        $"after its limit step {step.Number} alarms and keeps {outputs} on",
        "an alarm that nobody answers stops nothing: the tank overfills or the reagent runs out of its tank meanwhile",
        "write `then hold` (or `stop`, `abort`, `go …`) unless staying on is the safe thing");

    public static Diagnostic LimitBelowExpected(Step step, Duration expected) => new(
        "SEQ0409",
        Severity.Error,
        step.Limit.Span,
        $"the limit {Wording.Time(step.Limit.Time)} is shorter than the time expected, {Wording.Time(expected)}",
        "every ordinary batch would run into the limit",
        "lengthen the limit (common practice, no source: 1.3 times what is expected) or correct `expect`");

    public static Diagnostic LimitFarBeyondExpected(Step step, Duration expected, int times) => new(
        "SEQ0431",
        Severity.Warning,
        step.Limit.Span,
        $"the limit {Wording.Time(step.Limit.Time)} is more than {times} times what is expected, {Wording.Time(expected)}",
        "what goes wrong in the step goes on unseen until then: a pump runs dry, a tank overfills, solids settle",
        "shorten the limit (common practice, no source: 1.3 times what is expected) or correct `expect`");

    public static Diagnostic LimitBelowStays(StaysFact stays, Step step) => new(
        "SEQ0410",
        Severity.Error,
        stays.Span,
        $"`stays {Wording.Time(stays.Time)}` cannot be over before the limit of step {step.Number}, {Wording.Time(step.Limit.Time)}",
        "a `stays` begins anew with its step, so the limit always comes first and this way is never taken in time",
        "lengthen the limit beyond the longest wait in the step, or shorten `stays`");

    public static Diagnostic LimitBelowFirstPulse(DoseAction dose, Step step) => new(
        "SEQ0411",
        Severity.Error,
        dose.Span,
        $"the limit of step {step.Number}, {Wording.Time(step.Limit.Time)}, ends it before the first pulse is over",
        $"a dose begins with its wait of {Wording.Time(dose.Wait)}; nothing is ever dosed",
        "lengthen the limit, or shorten the wait if mixing and the probe allow it");

    public static Diagnostic LimitBelowNoResponse(DoseAction dose, Step step, Duration needed) => new(
        "SEQ0412",
        Severity.Warning,
        dose.Span,
        $"{dose.NoResponsePulses} pulses without response take {Wording.Time(needed)}, longer than the limit of step {step.Number}, {Wording.Time(step.Limit.Time)}",
        "the check for a frozen probe or an empty reagent tank can never act; the limit comes first and tells the operator less",
        "lengthen the limit, or count fewer pulses");

    public static Diagnostic LimitBelowFill(Transition way, Step step, string rate, Duration needed) => new(
        "SEQ0413",
        Severity.Warning,
        way.Span,
        $"from empty this takes at least {Wording.Time(needed)} at the fastest rate assumed, {rate}; the limit of step {step.Number} is {Wording.Time(step.Limit.Time)}",
        "a batch that starts with an empty tank always runs into the limit",
        "lengthen the limit, or correct the assumed rate");

    public static Diagnostic LoopWithoutEnd(Step first, string steps) => new(
        "SEQ0414",
        Severity.Error,
        first.Span,
        $"steps {steps} can follow one another in a circle for ever: no limit leads out",
        "every wait needs an end; here each limit only alarms or leads to another step of the circle, so dosing or recirculation may never stop",
        "let the limit of one of the steps hold, stop, abort or go out of the circle");
}
