using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>The only two ways out of a step, that compare by `&lt;` and `&gt;` and leave out nothing but equality.</summary>
internal sealed class GapBetweenWaysRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (IGrouping<int, Transition> ways in program.Transitions.SelectMany(way => way.From.Select(from => (from, way))).GroupBy(pair => pair.from, pair => pair.way))
        {
            if (ways.ToArray() is [var first, var second] && Compared(first) is { } one && Compared(second) is { } other
                && one.Comparison is Comparison.Less or Comparison.Greater && other.Comparison is Comparison.Less or Comparison.Greater
                && ConditionTruth.CanAllBe([(one, false), (other, false)])
                && !ConditionTruth.CanAllBe([(OrEqual(one), false), (other, false)]))
            {
                context.Report(CourseDiagnostics.GapBetweenWays(second, first));
            }
        }
    }

    private static CompareFact? Compared(Transition way) => way.From.Length == 1 ? (way.When is StaysFact stays ? stays.Condition : way.When) as CompareFact : null;

    private static CompareFact OrEqual(CompareFact fact) =>
        fact with { Comparison = fact.Comparison == Comparison.Less ? Comparison.LessOrEqual : Comparison.GreaterOrEqual };
}
