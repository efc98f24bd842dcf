using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A switch of an emergency stop (by the letters ES) that no trip takes to the emergency.</summary>
internal sealed class EmergencyStopWithoutTripRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> tripped = new(
            program.Trips.Where(trip => trip.Reaction == Reaction.Emergency).SelectMany(trip => ConditionTree.InputTags(trip.Condition)),
            StringComparer.Ordinal);
        foreach (SwitchInput input in program.SwitchInputs)
        {
            if (TagLetters.IsEmergencyStop(input.Tag) && !tripped.Contains(input.Tag))
            {
                context.Report(ProtectionDiagnostics.EmergencyStopWithoutTrip(input));
            }
        }
    }
}
