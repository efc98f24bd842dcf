using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>The edge of a condition that cannot be both true and false.</summary>
internal sealed class EdgeOfConstantRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (EdgeFact edge in context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<EdgeFact>())
        {
            if (ConditionTruth.IsConstant(edge.Condition))
            {
                context.Report(ProcedureDiagnostics.EdgeOfConstant(edge));
            }
        }
    }
}
