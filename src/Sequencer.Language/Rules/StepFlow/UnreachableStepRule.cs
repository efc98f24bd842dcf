using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A step to which no way leads from the first one, even if every join waited in vain for nothing.</summary>
internal sealed class UnreachableStepRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        for (int step = 0; step < facts.Graph.Steps.Length; step++)
        {
            if (!facts.HasWayTo(step))
            {
                context.Report(FlowDiagnostics.UnreachableStep(facts.Graph.Steps[step]));
            }
        }
    }
}
