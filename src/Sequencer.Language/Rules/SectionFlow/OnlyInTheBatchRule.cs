using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>Prompts and kept devices in a step that may be passed over or is of a section; in sections, values set and records too.</summary>
internal sealed class OnlyInTheBatchRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => !step.IsOfBatch || step.OnlyIf is not null))
        {
            foreach (StepAction line in step.Actions.Where(line => line is PromptAction or KeepAction || (!step.IsOfBatch && line is SetAction or RampAction or RecordAction)))
            {
                context.Report(SectionDiagnostics.OnlyInTheBatch(line, step));
            }
        }
    }
}
