using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A trip whose reaction is an alarm and which no condition reads.</summary>
internal sealed class TripOnlyAlarmsRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (Trip trip in program.Trips.Where(trip => trip.Reaction == Reaction.Alarm))
        {
            if (!context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<TripFact>().Any(fact => fact.Trip == trip.Name))
            {
                context.Report(ProtectionDiagnostics.TripOnlyAlarms(trip));
            }
        }
    }
}
