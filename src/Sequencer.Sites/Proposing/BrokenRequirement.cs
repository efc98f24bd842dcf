using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Proof;

namespace Sequencer.Sites.Proposing;

/// <summary>A <c>never</c> or <c>always</c> that fails, and what must not come together in it.</summary>
/// <param name="Unit">The unit that states it.</param>
/// <param name="Requirement">As the system has it.</param>
/// <param name="Verdict">With the run that breaks it.</param>
/// <param name="Parts">What must never come together.</param>
internal sealed record BrokenRequirement(UnitProgram Unit, Requirement Requirement, Fails Verdict, ImmutableArray<Condition> Parts)
{
    /// <summary>Those that fail and forbid something, in the order of the programs.</summary>
    public static ImmutableArray<BrokenRequirement> Of(LoadedSite site, IEnumerable<Verdict> verdicts)
    {
        Dictionary<string, Fails> failing = verdicts.OfType<Fails>().ToDictionary(fails => fails.Requirement, StringComparer.Ordinal);
        Dictionary<string, Requirement> known = site.System.Requirements.ToDictionary(requirement => requirement.Name, StringComparer.Ordinal);
        return
        [
            .. from unit in site.Programs.Units
               from clause in unit.Requirements
               let name = site.Programs.NameOf(unit, clause.Name)
               where failing.ContainsKey(name)
               let parts = Together(clause.Fact)
               where !parts.IsEmpty
               select new BrokenRequirement(unit, known[name], failing[name], parts),
        ];
    }

    /// <summary>The outputs of the unit itself that are on in one part, each with what must not come together with them.</summary>
    public IEnumerable<(ImmutableArray<string> Outputs, ImmutableArray<Condition> Others)> Devices()
    {
        foreach (Condition part in Parts)
        {
            Condition[] leaves = [.. ConditionTree.Parts(part).Where(inner => ConditionTree.Children(inner).IsEmpty)];
            bool isOn = ConditionTree.Parts(part).All(inner => inner is AnyOf or AllOf or OutputFact { Kind: OutputFactKind.On });
            string[] tags = [.. leaves.OfType<OutputFact>().Select(fact => fact.Output.Tag).Distinct(StringComparer.Ordinal)];
            if (isOn && !tags.Any(QualifiedName.IsForeign))
            {
                yield return ([.. tags], Parts.Remove(part));
            }
        }
    }

    /// <summary>Whether a condition speaks of something that the requirement speaks of.</summary>
    public bool IsAbout(Condition condition) => Names(condition).Intersect(Parts.SelectMany(Names), StringComparer.Ordinal).Any();

    private static IEnumerable<string> Names(Condition condition) =>
    [
        .. ConditionTree.InputTags(condition),
        .. ConditionTree.OutputTags(condition),
        .. ConditionTree.Parts(condition).Select(part => part switch
        {
            LatchFact latch => latch.Latch,
            NamedFact named => named.Fact,
            OwnerFact owner => owner.Equipment,
            TripFact trip => trip.Trip,
            _ => null,
        }).OfType<string>(),
    ];

    private static ImmutableArray<Condition> Together(RequiredFact fact) => fact switch
    {
        RequiredNever never => Joined(never.Condition),
        RequiredAlways { While: { } during } always => [.. Joined(during), new Negation(always.Condition, always.Condition.Span)],
        RequiredAlways always => [new Negation(always.Condition, always.Condition.Span)],
        _ => [],
    };

    /// <summary>A time behind a conjunction is no part of it.</summary>
    private static ImmutableArray<Condition> Joined(Condition condition)
    {
        while (condition is StaysFact stays)
        {
            condition = stays.Condition;
        }

        return condition is AllOf all ? all.Conditions : [condition];
    }
}
