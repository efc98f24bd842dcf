using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A dose with a check on response that its step's limit always forestalls.</summary>
internal sealed class LimitBelowNoResponseRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                Duration needed = new(Pulses.TimeOf(dose, dose.NoResponsePulses).Milliseconds + dose.Wait.Milliseconds);
                if (dose.NoResponsePulses > 0
                    && step.Limit.Time.Milliseconds > Pulses.TimeOf(dose, 1).Milliseconds
                    && step.Limit.Time.Milliseconds <= needed.Milliseconds)
                {
                    context.Report(FlowDiagnostics.LimitBelowNoResponse(dose, step, needed));
                }
            }
        }
    }
}
