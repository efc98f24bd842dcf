using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A fixed amount that takes longer to give, at the rate declared, than the step may last.</summary>
internal sealed class LimitBelowAmountRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>().Where(dose => dose.Of is null))
            {
                Duration needed = new(AmountDoseMeasure.Most(dose, context.ScanMilliseconds) * context.ScanMilliseconds);
                if (step.Limit.Time.Milliseconds <= needed.Milliseconds)
                {
                    context.Report(StepActionRuleDiagnostics.LimitBelowAmount(dose, step, needed));
                }
            }
        }
    }
}
