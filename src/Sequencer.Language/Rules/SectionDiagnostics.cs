using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes in the procedures of holding, restarting, stopping and aborting: codes and wording (SEQ0480 to SEQ0489).</summary>
internal static class SectionDiagnostics
{
    public static Diagnostic WayLeavesSection(SourceSpan way, Step from, Step to) => new(
        "SEQ0480",
        Severity.Error,
        way,
        $"step {from.Number} belongs to `{Sections.Word(from.State)}`, step {to.Number} to `{Sections.Word(to.State)}`: no way leads from one to the other",
        "which of them works is decided by the state of the unit alone; a way between them would start a step in a state that it is not written for",
        "lead to a step of the same section, or to `finish`: the state ends when its last step has finished");

    public static Diagnostic NotDrivenThere(DriveAction drive, Step step) => new(
        "SEQ0481",
        Severity.Error,
        drive.Span,
        $"step {step.Number} drives `{drive.Output.Tag}` while {Sections.Word(step.State)}, which the row of `{drive.Output.Tag}` does not say",
        $"whoever reads the output's row takes it for granted that a hold, stop or abort brings it to rest; here it moves again, with people perhaps beside it",
        $"write `driven while {Sections.Word(step.State)}` in the row of `{drive.Output.Tag}` if that is meant, or take this line out")
    {
        Notes = [new RelatedNote(drive.Output.Span, "its row")],
    };

    public static Diagnostic DrivenThereByNothing(Output output, string section) => new(
        "SEQ0482",
        Severity.Warning,
        output.Span,
        $"`{output.Tag}` may be driven while {section}, but no step of `{section}` drives it",
        "the row promises a movement that never comes; a reviewer may count on it (a flush, a drain)",
        $"write the step below `{section}`, or take the word out of the row");

    public static Diagnostic LimitDoesNotEnd(Step step, string allowed) => new(
        "SEQ0483",
        Severity.Error,
        step.Limit.Span,
        $"the limit of step {step.Number} does not end it: in `{Sections.Word(step.State)}` this reaction asks for nothing",
        "a unit that cannot finish its way to rest is neither running nor safe: when a valve sticks, it stands there with its outputs on for ever",
        $"write `then go finish` (with the alarm of its text), `then go` to a later step, {allowed}");

    public static Diagnostic SectionGoesRound(Step first, string steps) => new(
        "SEQ0484",
        Severity.Error,
        first.Span,
        $"steps {steps} can follow one another in a circle in `{Sections.Word(first.State)}`: it may never end",
        "each turn starts the limits anew, so nobody can say how long the unit takes to come to rest",
        "lead on to later steps only");

    public static Diagnostic DoseInSection(StepAction dose, Step step) => new(
        "SEQ0485",
        Severity.Error,
        dose.Span,
        $"step {step.Number} doses while {Sections.Word(step.State)}",
        "a unit is held, stopped or aborted because something is wrong; a dose that goes on by itself there is what the operator meant to end",
        "dose in a step of `procedure`; what must be added to make a reaction safe is given by a plain `run` with a time");

    public static Diagnostic FinishByLimit(Step step) => new(
        "SEQ0486",
        Severity.Error,
        step.Limit.Span,
        $"the limit of step {step.Number} finishes the batch",
        "a batch that ran into a limit would be recorded as Complete",
        "let the limit hold, stop or abort, or go to another step; `then go finish` is for the steps of `holding`, `restarting`, `stopping` and `aborting`");

    public static Diagnostic PassedOverWhereTo(Step step, int ways) => new(
        "SEQ0487",
        Severity.Error,
        step.Span,
        ways == 0
            ? $"step {step.Number} is done `only if` something, but no `go` of its own says where the batch goes on"
            : $"step {step.Number} is done `only if` something and has {ways} ways on",
        "a step that is passed over leads on by its one `go`; with none or several nobody can say where to",
        "give the step exactly one `go`, and put what must be decided or joined into the step behind it");

    public static Diagnostic PassedOverDoses(StepAction dose, Step step) => new(
        "SEQ0488",
        Severity.Error,
        dose.Span,
        $"step {step.Number} doses and is done `only if` something",
        "what a batch must get would depend on one glance at the entry of the step; a dose that is missed is not made up for",
        "put the choice into the `go` lines of the step before, so that both ways can be read");

    public static Diagnostic OnlyInTheBatch(StepAction line, Step step) => new(
        "SEQ0489",
        Severity.Error,
        line.Span,
        step.IsOfBatch
            ? $"step {step.Number} is done `only if` something, and this line cannot be passed over"
            : $"this line belongs to a step of `procedure`, not of `{Sections.Word(step.State)}`",
        step.IsOfBatch
            ? "a question that is never asked has no answer, and a device that is not taken into keeping is let go all the same: the batch would go on as if both had been done"
            : "on the way to rest nothing waits for a person, nothing is stored for later, and only outputs whose row says so are moved",
        step.IsOfBatch
            ? "put the choice into the `go` lines of the step before"
            : "ask, set and record in `procedure`; here drive the outputs that are `driven while` this state");
}
