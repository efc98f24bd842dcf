using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A requirement on inputs or outputs none of which any protection blocks or reads. One that speaks of steps and states alone is for the procedure to keep.</summary>
internal sealed class RequirementUntouchedRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        HashSet<string> touched = new(Touched(program), StringComparer.Ordinal);
        foreach (RequirementClause requirement in program.Requirements)
        {
            List<string> named = [.. ConditionPlace.Of(requirement.Fact).SelectMany(Tags)];
            if (named.Count > 0 && !named.Exists(touched.Contains))
            {
                context.Report(ProtectionDiagnostics.RequirementUntouched(requirement));
            }
        }
    }

    private static IEnumerable<string> Touched(UnitProgram program) =>
    [
        .. program.Interlocks.SelectMany(interlock => Tags(interlock.Condition).Concat(interlock.Outputs.Select(output => output.Tag))),
        .. program.Permissives.SelectMany(permissive => Tags(permissive.Condition).Concat(permissive.Outputs.Select(output => output.Tag))),
        .. program.Exclusions.SelectMany(exclusion => exclusion.Outputs).Select(output => output.Tag),
        .. program.Trips.SelectMany(trip => Tags(trip.Condition).Append(trip.Name)),
        .. program.Latches.SelectMany(latch => Tags(latch.Set).Concat(Tags(latch.Clear)).Append(latch.Name)),
    ];

    private static IEnumerable<string> Tags(Condition condition) => ConditionTree.InputTags(condition)
        .Concat(ConditionTree.OutputTags(condition))
        .Concat(ConditionTree.Parts(condition).OfType<LatchFact>().Select(fact => fact.Latch))
        .Concat(ConditionTree.Parts(condition).OfType<NamedFact>().Select(fact => fact.Fact))
        .Concat(ConditionTree.Parts(condition).OfType<TripFact>().Select(fact => fact.Trip));
}
