using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A group of protections that no trip and no interlock is in.</summary>
internal sealed class GroupWithoutMemberRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (ProtectionGroup group in program.Groups)
        {
            if (!program.Trips.Any(trip => trip.Group == group.Name) && !program.Interlocks.Any(interlock => interlock.Group == group.Name))
            {
                context.Report(ProtectionDiagnostics.GroupWithoutMember(group));
            }
        }
    }
}
