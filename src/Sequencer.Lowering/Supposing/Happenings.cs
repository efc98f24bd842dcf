using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Supposing;

/// <summary>
/// What a unit's requirements speak of, as questions whether it ever happens: the cause of a response, the <c>while</c> of an
/// always, each part of what must never come together. Each question is a requirement that denies it, named by
/// <see cref="NameOf"/> and titled with the words of the part.
/// </summary>
public static class Happenings
{
    /// <summary>The name of a requirement's part, counted from 1 in written order.</summary>
    public static string NameOf(string requirement, int part) => FormattableString.Invariant($"{requirement}.happens{part}");

    /// <summary>The words that introduce the parts: what each of them is to the requirement.</summary>
    public static string RoleOf(RequiredFact fact) => fact switch
    {
        RequiredResponse => "cause",
        RequiredAlways => "condition",
        _ => "part",
    };

    /// <summary>
    /// What must happen for the requirement to speak of anything; empty where it forbids one plain fact, or demands one always.
    /// </summary>
    public static ImmutableArray<Condition> PartsOf(RequiredFact fact) => fact switch
    {
        RequiredResponse response => [response.Trigger],
        RequiredAlways { While: { } condition } => [condition],
        RequiredNever never when Joined(never.Condition) is AllOf all => all.Conditions,
        _ => [],
    };

    internal static void Lower(UnitScan scan)
    {
        foreach (RequirementClause clause in scan.Unit.Requirements)
        {
            ImmutableArray<Condition> parts = PartsOf(clause.Fact);
            for (int index = 0; index < parts.Length; index++)
            {
                string name = NameOf(scan.Own(clause.Name), index + 1);
                Truth happens = ConditionLowering.Lower(
                    scan, parts[index], new ConditionPlace(name, thisScansOutputs: true, purpose: StatePurpose.Monitor));
                scan.System.Require(new Requirement(
                    name, clause.Title, parts[index].Span.Text.ToString(), RequirementKind.Never, scan.Build.Not(happens.Possibly), new Origin(clause.Span)));
            }
        }
    }

    /// <summary>A time behind a conjunction is no part of it.</summary>
    private static Condition Joined(Condition condition)
    {
        while (condition is StaysFact stays)
        {
            condition = stays.Condition;
        }

        return condition;
    }
}
