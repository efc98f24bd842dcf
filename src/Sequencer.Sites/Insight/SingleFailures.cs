using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Lowering;
using Sequencer.Lowering.Supposing;
using Sequencer.Proof;

namespace Sequencer.Sites.Insight;

/// <summary>
/// Each instrument and device that a requirement speaks of fails in turn, and the requirement is judged by what is so in the
/// plant. A requirement was proved for every reading, so an instrument that it does not speak of cannot defeat it.
/// </summary>
internal static class SingleFailures
{
    private static readonly ImmutableArray<FailureMode> WaysOfBeingStuck = [FailureMode.StuckLow, FailureMode.StuckHigh, FailureMode.Frozen];

    public static ImmutableArray<SingleFailure> Of(SiteProgram site, IReadOnlyList<Holds> proved, Questions questions)
    {
        Dictionary<string, Holds> verdicts = proved.ToDictionary(holds => holds.Requirement, StringComparer.Ordinal);
        ImmutableArray<Case> first =
        [
            .. from unit in site.Units
               from clause in unit.Requirements
               let name = site.NameOf(unit, clause.Name)
               where verdicts.ContainsKey(name)
               from one in Failures(site, unit, clause)
               select new Case(one.Unit, one.Failure, name),
        ];
        ImmutableArray<SingleFailure> found = Judge(site, first, verdicts, questions);

        // A reading that defeats the requirement at some value: does it at an end, or where it stands?
        ImmutableArray<Case> closer =
        [
            .. from one in found
               where one.Failure.Mode == FailureMode.Stuck && one.Verdict is not Holds
               from mode in WaysOfBeingStuck
               select new Case(one.Unit, one.Failure with { Mode = mode }, one.Requirement.Name),
        ];
        return [.. found.Where(one => one.Failure.Mode != FailureMode.Stuck || one.Verdict is Holds), .. Judge(site, closer, verdicts, questions)];
    }

    private static ImmutableArray<SingleFailure> Judge(SiteProgram site, ImmutableArray<Case> cases, Dictionary<string, Holds> verdicts, Questions questions)
    {
        IGrouping<(string Unit, Failure Failure), Case>[] groups = [.. cases.GroupBy(one => (one.Unit, one.Failure))];
        return
        [
            .. questions.Each("single failures", groups, (group, _) =>
            {
                TransitionSystem system = SiteLowering.Lower(site, new Supposition { Failure = group.Key.Failure });
                return group.Select(one =>
                {
                    Requirement requirement = system.Requirements.First(requirement => requirement.Name == one.Requirement);
                    return new SingleFailure(one.Unit, one.Failure, requirement, system, questions.AskOfHeld(system, requirement, verdicts[one.Requirement]));
                }).ToArray();
            }).SelectMany(judged => judged),
        ];
    }

    private static IEnumerable<(string Unit, Failure Failure)> Failures(SiteProgram site, UnitProgram unit, RequirementClause clause)
    {
        Condition[] conditions = [.. Conditions(clause.Fact)];
        Real[] reals = [.. conditions.SelectMany(ConditionTree.Amounts).OfType<RealQuantity>().Select(quantity => quantity.Real)];
        string[] tags =
        [
            .. conditions.SelectMany(ConditionTree.InputTags),
            .. conditions.SelectMany(condition => ConditionTree.Parts(condition).OfType<OutputFact>()).Select(fact => fact.Output.Tag),
            .. reals.Length == 0 ? (IEnumerable<string>)[] : [.. unit.AnalogueInputs.Select(input => input.Tag), .. unit.SwitchInputs.Select(input => input.Tag), .. unit.Outputs.Select(output => output.Tag)],
        ];
        foreach (string tag in tags.Distinct(StringComparer.Ordinal))
        {
            (UnitProgram owner, string own) = QualifiedName.IsForeign(tag)
                ? (site.Units.First(other => other.Name == QualifiedName.Split(tag).Unit), QualifiedName.Split(tag).Name)
                : (unit, tag);
            FailureMode[] modes = owner.AnalogueInputs.Any(input => input.Tag == own) ? [FailureMode.Stuck]
                : owner.SwitchInputs.Any(input => input.Tag == own) ? [FailureMode.StuckOn, FailureMode.StuckOff]
                : owner.Outputs.Any(output => output.Tag == own) ? [FailureMode.StaysOn, FailureMode.StaysOff]
                : [];
            foreach (FailureMode mode in modes)
            {
                yield return (owner.Name, new Failure(own, mode));
            }
        }
    }

    private static IEnumerable<Condition> Conditions(RequiredFact fact) => fact switch
    {
        RequiredNever never => [never.Condition],
        RequiredAlways { While: { } during } always => [always.Condition, during],
        RequiredAlways always => [always.Condition],
        RequiredResponse { GoalCondition: { } goal } response => [response.Trigger, goal],
        RequiredResponse response => [response.Trigger],
        _ => [],
    };

    private sealed record Case(string Unit, Failure Failure, string Requirement);
}
