using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>Whether something that a requirement speaks of ever happens.</summary>
/// <param name="Requirement">The requirement's name on the site.</param>
/// <param name="Title">Its title.</param>
/// <param name="Role">What the part is to it: its cause, its condition, a part.</param>
/// <param name="Words">The part as written.</param>
/// <param name="Verdict">Of the denial: where it fails, its trace is a run in which the part happens.</param>
internal sealed record Occurrence(string Requirement, string Title, string Role, string Words, Verdict Verdict)
{
    /// <summary>True, false, or null where undecided.</summary>
    public bool? Happens => Verdict switch
    {
        Fails => true,
        Holds => false,
        _ => null,
    };
}

/// <summary>What the requirements speak of, each asked whether it ever happens; what two of them speak of is asked once.</summary>
internal static class Occurrences
{
    public static ImmutableArray<Occurrence> Of(SiteProgram site, Questions questions)
    {
        TransitionSystem system = SiteLowering.Lower(site, new Supposition { RequirementsAskWhatHappens = true });
        Dictionary<string, Requirement> denials = system.Requirements.ToDictionary(requirement => requirement.Name, StringComparer.Ordinal);
        (string Name, string Role, Requirement Denial)[] parts =
        [
            .. from unit in site.Units
               from clause in unit.Requirements
               let name = site.NameOf(unit, clause.Name)
               from part in Enumerable.Range(1, Happenings.PartsOf(clause.Fact).Length)
               select (name, Happenings.RoleOf(clause.Fact), denials[Happenings.NameOf(name, part)]),
        ];
        Requirement[] distinct = [.. parts.Select(part => part.Denial).DistinctBy(denial => denial.Holds)];
        ImmutableArray<Verdict> verdicts = questions.Each("what happens at all", distinct, (denial, _) => questions.Ask(system, denial));
        questions.Learn(verdicts.OfType<Fails>().Select(found => found.Trace));
        verdicts = questions.Each("what happens at all, once more", [.. distinct.Zip(verdicts)], (open, _) =>
            questions.AskAgain(system, open.First, open.Second));
        questions.Learn(verdicts.OfType<Fails>().Select(found => found.Trace));
        Dictionary<Expression, Verdict> known = distinct.Zip(verdicts).ToDictionary(pair => pair.First.Holds, pair => pair.Second);
        return [.. parts.Select(part => new Occurrence(part.Name, part.Denial.Title, part.Role, part.Denial.Statement, known[part.Denial.Holds]))];
    }
}
