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
}
