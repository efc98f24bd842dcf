using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;
using Sequencer.Proof.Insight;

namespace Sequencer.Sites.Insight;

/// <summary>What one requirement that holds leans on.</summary>
/// <param name="Requirement">The requirement.</param>
/// <param name="Protections">Protections that its proof needs, each; in the order of <see cref="ProtectionList"/>.</param>
/// <param name="Assumptions">Assumptions that its proof needs, each.</param>
internal sealed record LeansOn(Requirement Requirement, ImmutableArray<Protection> Protections, ImmutableArray<string> Assumptions);

/// <summary>
/// Which protections and assumptions each verdict leans on: the invariant that was found is checked once more in a system in
/// which every protection may be out of force, and the check tells which must not be.
/// </summary>
internal static class Leanings
{
    /// <returns>One for each requirement that holds; null for one that could not be told within the budget.</returns>
    public static ImmutableArray<(Requirement Requirement, LeansOn? Found)> Of(
        SiteProgram site, TransitionSystem system, ImmutableArray<Verdict> verdicts, Questions questions)
    {
        TransitionSystem doubted = SiteLowering.Lower(site, new Supposition { ProtectionsAreAssumed = true });
        Dictionary<string, Requirement> requirements = doubted.Requirements.ToDictionary(requirement => requirement.Name, StringComparer.Ordinal);
        ImmutableArray<Protection> protections = ProtectionList.Of(site);
        (Requirement Requirement, Holds Verdict)[] held =
        [
            .. system.Requirements.Zip(verdicts).Where(pair => pair.Second is Holds).Select(pair => (pair.First, (Holds)pair.Second)),
        ];
        ImmutableArray<ImmutableArray<string>?> names = questions.Each("what verdicts lean on", held, (one, cancellation) =>
            Leaning.Of(doubted, requirements[one.Requirement.Name], one.Verdict.Invariant, Questions.Budget, cancellation));
        return [.. held.Zip(names, (one, found) => (one.Requirement, found is { } known ? Read(one.Requirement, known, protections) : null))];
    }

    private static LeansOn Read(Requirement requirement, ImmutableArray<string> names, ImmutableArray<Protection> protections)
    {
        ImmutableArray<Protection> needed = [.. protections.Where(protection => names.Contains(protection.Name))];
        return new LeansOn(requirement, needed, [.. names.Where(name => needed.All(protection => protection.Name != name))]);
    }
}
