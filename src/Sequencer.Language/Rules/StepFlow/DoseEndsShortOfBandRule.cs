using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose whose target, for some setting of the parameters, lies outside the band that is the only way on from its step, on the side where the dose rests.</summary>
internal sealed class DoseEndsShortOfBandRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ILookup<int, Transition> ways = program.Transitions
            .SelectMany(way => way.From.Select(step => (Step: step, Way: way)))
            .ToLookup(pair => pair.Step, pair => pair.Way);
        foreach (Step step in program.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                if (ways[step.Number].ToArray() is [var only])
                {
                    Check(dose, only, context);
                }
            }
        }
    }

    private static void Check(DoseAction dose, Transition way, RuleContext context)
    {
        Condition inside = way.When is StaysFact stays ? stays.Condition : way.When;
        if (inside is not WithinFact { Value: ReadingQuantity reading } band || reading.Input.Tag != dose.Signal.Tag)
        {
            return;
        }

        Rational? gap = dose.Output.Delivery?.Reagent.Effect switch
        {
            ReagentEffect.Raises => LinearForm.Difference(band.Lower, dose.Target).Bounds()?.High,
            ReagentEffect.Lowers => LinearForm.Difference(dose.Target, band.Upper).Bounds()?.High,
            _ => null,
        };
        if (gap is { Sign: > 0 } distance)
        {
            context.Report(ProcedureDiagnostics.DoseEndsShortOfBand(dose, band.Span, Wording.Amount(distance, dose.Signal.Unit)));
        }
    }
}
