using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A limit that leads to its own step.</summary>
internal sealed class LimitLeadsBackRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Step step in program.Steps)
        {
            if (step.Limit.Target == step.Number)
            {
                context.Report(FlowDiagnostics.LimitLeadsBack(step));
            }
        }
    }
}
