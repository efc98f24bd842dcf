using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A dose in a step of the batch that may be passed over; sections do not dose at all.</summary>
internal sealed class PassedOverDosesRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => step.IsOfBatch && step.OnlyIf is not null))
        {
            foreach (StepAction dose in step.Actions.Where(OutputUse.Doses))
            {
                context.Report(SectionDiagnostics.PassedOverDoses(dose, step));
            }
        }
    }
}
