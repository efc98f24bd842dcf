using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>Two steps that lead to each other at once, by conditions of which one always holds: no band, no time, no delay between.</summary>
internal sealed class StepsChatterRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach ((Transition first, Transition second) in Chattering(program))
        {
            context.Report(CourseDiagnostics.StepsChatter(second, first));
        }
    }

    /// <summary>Pairs of ways that lead back and forth, in the order written.</summary>
    public static IEnumerable<(Transition First, Transition Second)> Chattering(UnitProgram program)
    {
        List<Transition> ways = [.. program.Transitions.Where(way => way.From.Length == 1 && IsUndelayed(way.When))];
        ILookup<int, int> leaving = Enumerable.Range(0, ways.Count).ToLookup(place => ways[place].From[0]);
        for (int second = 1; second < ways.Count; second++)
        {
            foreach (int first in ways[second].To.SelectMany(step => leaving[step]).Where(place => place < second).Order())
            {
                if (ways[first].To.Contains(ways[second].From[0])
                    && !ConditionTruth.CanAllBe([(ways[first].When, false), (ways[second].When, false)]))
                {
                    yield return (ways[first], ways[second]);
                }
            }
        }
    }

    private static bool IsUndelayed(Condition condition) => ConditionTree.Facts(condition)
        .All(signed => !signed.Timed && signed.Fact is not SwitchFact { Input: { OnDelay.Milliseconds: > 0, OffDelay.Milliseconds: > 0 } });
}
