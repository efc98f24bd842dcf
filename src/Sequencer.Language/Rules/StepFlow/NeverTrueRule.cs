using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A condition that its own structure makes false.</summary>
internal sealed class NeverTrueRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (ConditionPlace place in context.Facts(program).Conditions)
        {
            if (!ConditionTruth.CanBe(place.Condition, true))
            {
                context.Report(ProcedureDiagnostics.NeverTrue(place.Condition));
            }
        }
    }
}
