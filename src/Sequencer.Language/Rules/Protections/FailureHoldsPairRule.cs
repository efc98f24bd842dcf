using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A member of a pair whose failure holds, stops or aborts the unit.</summary>
internal sealed class FailureHoldsPairRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (DutyPair pair in program.Pairs)
        {
            foreach (Output member in new[] { pair.First, pair.Second })
            {
                if (member.Confirmation is { Reaction: not Reaction.Alarm })
                {
                    context.Report(ProtectionDiagnostics.FailureHoldsPair(pair, member));
                }
            }
        }
    }
}
