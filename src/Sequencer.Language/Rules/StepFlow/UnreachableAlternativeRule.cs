using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A way that leaves one step, whose condition never holds without one of those written above it.</summary>
internal sealed class UnreachableAlternativeRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (IGrouping<int, Transition> ways in program.Transitions.Where(way => way.From.Length == 1).GroupBy(way => way.From[0]))
        {
            List<(Condition Condition, bool Value)> above = [];
            foreach (Transition way in ways)
            {
                if (above.Count > 0 && ConditionTruth.CanBe(way.When, true) && !ConditionTruth.CanAllBe([(way.When, true), .. above]))
                {
                    context.Report(ProcedureDiagnostics.UnreachableAlternative(way));
                }

                above.Add((way.When, false));
            }
        }
    }
}
