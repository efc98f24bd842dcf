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
            if (!ConditionTruth.CanBe(place.Condition, true) && !HasConstantEdge(place.Condition))
            {
                context.Report(ProcedureDiagnostics.NeverTrue(place.Condition));
            }
        }
    }

    /// <summary>Such an edge has a diagnostic of its own.</summary>
    private static bool HasConstantEdge(Condition condition) =>
        ConditionTree.Parts(condition).OfType<EdgeFact>().Any(edge => ConditionTruth.IsConstant(edge.Condition));
}
