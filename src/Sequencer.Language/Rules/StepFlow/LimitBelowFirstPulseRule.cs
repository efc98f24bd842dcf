using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose whose first wait and pulse last as long as the step may.</summary>
internal sealed class LimitBelowFirstPulseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                if (step.Limit.Time.Milliseconds <= Pulses.TimeOf(dose, 1).Milliseconds)
                {
                    context.Report(FlowDiagnostics.LimitBelowFirstPulse(dose, step));
                }
            }
        }
    }
}
