using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A delayed action whose delay is as long as the step may last.</summary>
internal sealed class DelayBeyondLimitRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            foreach (DriveAction drive in step.Actions.OfType<DriveAction>())
            {
                if (drive.After.Milliseconds >= step.Limit.Time.Milliseconds)
                {
                    context.Report(ProcedureDiagnostics.DelayBeyondLimit(drive, step));
                }
            }
        }
    }
}
