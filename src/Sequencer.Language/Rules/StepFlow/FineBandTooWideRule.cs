using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>Fine pulses from a distance that the reading cannot have from the target: at the side from which the reagent moves it (either side, where it does not say), with the setting that leaves most room.</summary>
internal sealed class FineBandTooWideRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DoseAction dose in program.Steps.SelectMany(step => step.Actions).OfType<DoseAction>())
        {
            if (dose.FineWithin is { } within
                && LinearForm.Of(within).Bounds() is var (band, _)
                && LinearForm.Of(dose.Target).Bounds() is var (low, high)
                && band >= Room(dose, low, high))
            {
                context.Report(ProcedureDiagnostics.FineBandTooWide(dose, Wording.Amount(band, dose.Signal.Unit)));
            }
        }
    }

    private static Rational Room(DoseAction dose, Rational low, Rational high)
    {
        Rational below = high - (dose.Signal.Resolution * dose.Signal.Minimum);
        Rational above = (dose.Signal.Resolution * dose.Signal.Maximum) - low;
        return dose.Output.Delivery?.Reagent.Effect switch
        {
            ReagentEffect.Raises => below,
            ReagentEffect.Lowers => above,
            _ => below > above ? below : above,
        };
    }
}
