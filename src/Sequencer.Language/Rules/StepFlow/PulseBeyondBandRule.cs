using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose whose least response for each pulse is more than what lies between its target and the far end of the band that is the only way on. Two doses on one output have a message of their own.</summary>
internal sealed class PulseBeyondBandRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                if (step.Actions.Count(action => OutputUse.DrivenBy(action)?.Tag == dose.Output.Tag) == 1
                    && program.Transitions.Where(way => way.From.Contains(step.Number)).ToArray() is [var only])
                {
                    Check(dose, only, context);
                }
            }
        }
    }

    private static void Check(DoseAction dose, Transition way, RuleContext context)
    {
        Condition inside = way.When is StaysFact stays ? stays.Condition : way.When;
        if (inside is not WithinFact { Value: ReadingQuantity reading } band || reading.Input.Tag != dose.Signal.Tag
            || LinearForm.Of(dose.NoResponseChange).Bounds() is not var (least, _))
        {
            return;
        }

        Rational? room = dose.Output.Delivery?.Reagent.Effect switch
        {
            ReagentEffect.Raises => LinearForm.Difference(band.Upper, dose.Target).Bounds()?.High,
            ReagentEffect.Lowers => LinearForm.Difference(dose.Target, band.Lower).Bounds()?.High,
            _ => null,
        };
        Rational each = least / Rational.FromInt64(dose.NoResponsePulses);
        if (room is { Sign: >= 0 } there && each > there)
        {
            context.Report(CourseDiagnostics.PulseBeyondBand(dose, band.Span, Wording.Amount(each, dose.Signal.Unit), Wording.Amount(there, dose.Signal.Unit)));
        }
    }
}
