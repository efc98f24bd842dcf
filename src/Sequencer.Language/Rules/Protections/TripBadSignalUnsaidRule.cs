using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A trip on a reading that does not say what a bad signal does.</summary>
internal sealed class TripBadSignalUnsaidRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Trip trip in program.Trips)
        {
            if (ConditionTree.Amounts(trip.Condition).OfType<ReadingQuantity>().FirstOrDefault() is { } reading && !WrittenWords.Say(trip.Span, "if bad"))
            {
                context.Report(ProtectionDiagnostics.TripBadSignalUnsaid(trip, reading.Input.Tag));
            }
        }
    }
}
