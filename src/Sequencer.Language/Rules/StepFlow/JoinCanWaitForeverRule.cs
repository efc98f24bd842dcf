using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A situation that no way leaves, in which a step waits in a join for one that is not active.</summary>
internal sealed class JoinCanWaitForeverRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ProgramFacts facts = context.Facts(program);
        HashSet<int> told = [];
        foreach (Situation situation in facts.Situations.DeadEnds)
        {
            foreach (int step in situation.Active)
            {
                foreach (int index in facts.Graph.Leaving[step])
                {
                    Report(facts, index, step, situation, told, context);
                }
            }
        }
    }

    private static void Report(ProgramFacts facts, int index, int step, Situation situation, HashSet<int> told, RuleContext context)
    {
        StepWay way = facts.Graph.Ways[index];
        if (way.Transition is { } join && facts.Situations.Pairs.IsEnabled(index) && told.Add(index))
        {
            int missing = way.From.First(from => !situation.Contains(from));
            context.Report(FlowDiagnostics.JoinCanWaitForever(join, facts.Graph.Steps[step].Number, facts.Graph.Steps[missing].Number.ToString(CultureInfo.InvariantCulture)));
        }
    }
}
