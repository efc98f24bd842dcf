using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A <c>stays</c> shorter than a scan.</summary>
internal sealed class StaysBelowScanRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (StaysFact stays in context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<StaysFact>())
        {
            if (stays.Time.Milliseconds < context.ScanMilliseconds)
            {
                context.Report(ProcedureDiagnostics.StaysBelowScan(stays, context.ScanMilliseconds));
            }
        }
    }
}
