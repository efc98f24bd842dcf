using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A join whose steps can each be active but never all together; see <see cref="Situations"/> for what is decided.</summary>
internal sealed class JoinNeverOpenedRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        for (int index = 0; index < facts.Graph.Ways.Length; index++)
        {
            StepWay way = facts.Graph.Ways[index];
            if (way is { Transition: { } join, From.Length: > 1 } && !facts.Situations.Pairs.IsEnabled(index) && way.From.All(facts.HasWayTo))
            {
                context.Report(FlowDiagnostics.JoinNeverOpened(join, string.Join(", ", join.From)));
            }
        }
    }
}
