using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A dose in a section.</summary>
internal sealed class DoseInSectionRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => !step.IsOfBatch))
        {
            foreach (StepAction dose in step.Actions.Where(OutputUse.Doses))
            {
                context.Report(SectionDiagnostics.DoseInSection(dose, step));
            }
        }
    }
}
