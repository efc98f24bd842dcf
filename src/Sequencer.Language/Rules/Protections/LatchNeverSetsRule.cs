using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A latch that is cleared whenever it is set.</summary>
internal sealed class LatchNeverSetsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Latch latch in program.Latches)
        {
            if (ConditionTruth.CanBe(latch.Set, true) && ConditionTruth.CanBe(latch.Clear, false)
                && !ConditionTruth.CanAllBe([(latch.Set, true), (latch.Clear, false)]))
            {
                context.Report(SignalDiagnostics.LatchNeverSets(latch));
            }
        }
    }
}
