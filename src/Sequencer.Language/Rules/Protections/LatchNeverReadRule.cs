using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A latch that no condition reads.</summary>
internal sealed class LatchNeverReadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> read = new(
            context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<LatchFact>().Select(fact => fact.Latch),
            StringComparer.Ordinal);
        foreach (Latch latch in program.Latches)
        {
            if (!read.Contains(latch.Name) && !context.ReadElsewhere.Contains(latch.Name))
            {
                context.Report(SignalDiagnostics.LatchNeverRead(latch));
            }
        }
    }
}
