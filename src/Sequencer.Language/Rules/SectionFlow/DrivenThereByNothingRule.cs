using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A section in the row of an output that no step of that section drives.</summary>
internal sealed class DrivenThereByNothingRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Output output in program.Outputs)
        {
            foreach (ProceduralState state in output.DrivenWhile.Where(state => !IsDriven(program, output, state)))
            {
                context.Report(SectionDiagnostics.DrivenThereByNothing(output, Sections.Word(state)));
            }
        }
    }

    private static bool IsDriven(UnitProgram program, Output output, ProceduralState state) => program.Steps
        .Where(step => step.State == state)
        .SelectMany(step => step.Actions)
        .Any(action => OutputUse.DrivenBy(action)?.Tag == output.Tag);
}
