using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>What becomes of one requirement when a protection is taken out.</summary>
/// <param name="Protection">What was taken out; all others are in place.</param>
/// <param name="Requirement">A requirement whose proof leans on it.</param>
/// <param name="System">The system without it, which a trace of the verdict is of.</param>
/// <param name="Verdict">Of the requirement in that system.</param>
internal sealed record Removal(Protection Protection, Requirement Requirement, TransitionSystem System, Verdict Verdict);

/// <summary>
/// Each protection taken out in turn. A requirement whose proof does not lean on it holds without it by that same proof, so
/// only the others are decided anew.
/// </summary>
internal static class Removals
{
    public static ImmutableArray<Removal> Of(SiteProgram site, IReadOnlyList<LeansOn> leanings, Questions questions)
    {
        ImmutableArray<Protection> needed =
            [.. ProtectionList.Of(site).Where(protection => leanings.Any(one => one.Protections.Contains(protection)))];
        ImmutableArray<TransitionSystem> systems = questions.Each("protections taken out", needed, (protection, _) =>
            SiteLowering.Lower(site, new Supposition { Absent = [protection.Name] }));
        (Protection Protection, TransitionSystem System, Requirement Requirement)[] asked =
        [
            .. from pair in needed.Zip(systems)
               from one in leanings
               where one.Protections.Contains(pair.First)
               select (pair.First, pair.Second, pair.Second.Requirements.First(requirement => requirement.Name == one.Requirement.Name)),
        ];
        return questions.Each("protections removed", asked, (one, _) =>
            new Removal(one.Protection, one.Requirement, one.System, questions.Ask(one.System, one.Requirement)));
    }
}
