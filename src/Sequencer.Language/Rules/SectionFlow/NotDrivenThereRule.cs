using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A step of a section that drives an output whose row does not name the section.</summary>
internal sealed class NotDrivenThereRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => !step.IsOfBatch))
        {
            foreach (DriveAction drive in step.Actions.OfType<DriveAction>().Where(drive => !drive.Output.DrivenWhile.Contains(step.State)))
            {
                context.Report(SectionDiagnostics.NotDrivenThere(drive, step));
            }
        }
    }
}
