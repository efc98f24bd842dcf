using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.SectionFlow;

/// <summary>A limit of the batch's own procedure that ends the branch as if it were done.</summary>
internal sealed class FinishByLimitRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps.Where(step => step.IsOfBatch && step.Limit.GoTo is { IsEmpty: true }))
        {
            context.Report(SectionDiagnostics.FinishByLimit(step));
        }
    }
}
