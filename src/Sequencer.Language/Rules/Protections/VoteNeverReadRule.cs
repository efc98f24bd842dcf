using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A vote that no condition reads.</summary>
internal sealed class VoteNeverReadRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> read = new(
            context.Facts(program).Conditions.SelectMany(place => ConditionTree.Parts(place.Condition)).OfType<VoteFact>().Select(fact => fact.Vote.Name),
            StringComparer.Ordinal);
        foreach (Vote vote in program.Votes.Where(vote => !read.Contains(vote.Name)))
        {
            context.Report(ProtectionDiagnostics.VoteNeverRead(vote));
        }
    }
}
