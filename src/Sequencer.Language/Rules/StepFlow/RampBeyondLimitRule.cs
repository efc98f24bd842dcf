using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A ramp that takes as long as its step may last.</summary>
internal sealed class RampBeyondLimitRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (RampAction ramp in step.Actions.OfType<RampAction>().Where(ramp => ramp.Time.Milliseconds >= step.Limit.Time.Milliseconds))
            {
                context.Report(StepActionRuleDiagnostics.RampBeyondLimit(ramp, step));
            }
        }
    }
}
