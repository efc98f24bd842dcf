using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A way into a step that can be active already: branches that meet without a join.</summary>
internal sealed class StepEnteredTwiceRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        foreach ((int index, int target) in facts.Situations.Reentered)
        {
            StepWay way = facts.Graph.Ways[index];
            SourceSpan span = way.Transition?.Span ?? facts.Graph.Steps[way.From[0]].Limit.Span;
            context.Report(FlowDiagnostics.StepEnteredTwice(span, facts.Graph.Steps[target].Number));
        }
    }
}
