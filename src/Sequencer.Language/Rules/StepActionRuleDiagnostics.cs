using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes in what steps do beside driving and pulsing: codes and wording (SEQ0440 and up).</summary>
internal static class StepActionRuleDiagnostics
{
    public static Diagnostic LimitBelowAmount(AmountDoseAction dose, Step step, Duration needed) => new(
        "SEQ0440",
        Severity.Error,
        dose.Span,
        $"the amount takes {Wording.Time(needed)} at the rate of `{dose.Output.Tag}`, and the limit of step {step.Number} is {Wording.Time(step.Limit.Time)}",
        "every batch runs into the limit with part of the reagent missing",
        "lengthen the limit, or correct the amount or the rate");

    public static Diagnostic DoseNotAwaited(Transition way, AmountDoseAction dose, Step step) => new(
        "SEQ0441",
        Severity.Warning,
        way.Span,
        $"step {step.Number} can be left before `{dose.Output.Tag}` has given its amount",
        "the batch goes on with part of the reagent missing, and nobody is told",
        $"add `{dose.Output.Tag} dosed` to the condition")
    {
        Notes = [new RelatedNote(dose.Span, "the dose")],
    };

    public static Diagnostic AnswerNotHandled(PromptAction prompt, string answer, Step step) => new(
        "SEQ0442",
        Severity.Error,
        prompt.Span,
        $"nothing happens when `{prompt.Name}` is answered \"{answer}\"",
        $"the operator has answered, and step {step.Number} stands still until its limit",
        $"write `go ... when {prompt.Name} answered \"{answer}\"`, or take the answer out");

    public static Diagnostic LimitBelowPrompt(PromptAction prompt, Step step) => new(
        "SEQ0443",
        Severity.Warning,
        prompt.Span,
        $"`{prompt.Name}` may stay unanswered for {Wording.Time(prompt.Limit)}, as long as step {step.Number} may last, {Wording.Time(step.Limit.Time)}",
        "the limit of the step comes first and does not tell the operator that an answer is missing",
        "give the prompt a shorter limit than the step");

    public static Diagnostic LoopWithoutCount(Transition back, string steps) => new(
        "SEQ0444",
        Severity.Warning,
        back.Span,
        $"steps {steps} can follow one another in a circle any number of times",
        "each turn keeps its limits, and no limit counts the turns: reagent, time and wear add up unseen",
        "write how often it may be taken: `go ... when ..., at most 5 times then hold \"Turned too often\"`");

    public static Diagnostic KeepNeverEnds(KeepAction keep) => new(
        "SEQ0445",
        Severity.Error,
        keep.Span,
        $"no way from here leads to step {keep.Until}: `{keep.Output.Tag}` is kept to the end of the batch",
        "the step that should end it comes before, on another branch, or not at all",
        "name a step that follows, or drive the output in the steps where it is needed");

    public static Diagnostic KeepPassedBy(KeepAction keep, string path) => new(
        "SEQ0446",
        Severity.Warning,
        keep.Span,
        $"by way of steps {path} the batch ends without step {keep.Until}: `{keep.Output.Tag}` is kept until then",
        "on this way the device runs longer than the line says; only the end of the batch stops it",
        $"lead this way through step {keep.Until} too, or end the action in an earlier step");

    public static Diagnostic ConflictingSets(StepAction second, StepAction first, string output, int step, int otherStep) => new(
        "SEQ0447",
        Severity.Error,
        second.Span,
        step == otherStep
            ? $"step {step} gives `{output}` two values"
            : $"steps {otherStep} and {step} can be active together and give `{output}` two values",
        "an output has one value: one of the two lines does not do what it says, and nobody sees it",
        "set it in one of them")
    {
        Notes = [new RelatedNote(first.Span, "the other one")],
    };

    public static Diagnostic RampBeyondLimit(RampAction ramp, Step step) => new(
        "SEQ0448",
        Severity.Error,
        ramp.Span,
        $"the ramp takes {Wording.Time(ramp.Time)}, and the limit of step {step.Number} is {Wording.Time(step.Limit.Time)}",
        "the step always runs into its limit before the output is where it should be",
        "lengthen the limit, or shorten the ramp");
}
