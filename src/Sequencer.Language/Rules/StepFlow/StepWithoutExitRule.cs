using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A step of the batch that neither a transition, nor a join, nor its limit leaves; limits of sections have a rule of their own.</summary>
internal sealed class StepWithoutExitRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        StepGraph graph = context.Facts(program).Graph;
        for (int step = 0; step < graph.Steps.Length; step++)
        {
            if (graph.Leaving[step].IsEmpty && graph.Steps[step] is { IsOfBatch: true, Limit.Reaction: Reaction.Alarm })
            {
                context.Report(FlowDiagnostics.StepWithoutExit(graph.Steps[step]));
            }
        }
    }
}
