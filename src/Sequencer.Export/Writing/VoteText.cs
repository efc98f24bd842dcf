using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>What votes say, each once, behind the readings that they look at; and their alarms.</summary>
internal static class VoteText
{
    public static void Write(UnitText unit)
    {
        foreach (Vote vote in unit.Unit.Votes)
        {
            ConditionSite site = new(vote.Name);
            string surely = unit.Conditions.Surely(vote.Fact, site);
            string possibly = unit.Conditions.Possibly(vote.Fact, site);
            unit.Body.Clause(vote.Span);
            unit.Body.Add($"{unit.Scratch(vote.Name)} := {surely};");
            if (ConditionText.CanBeUnknown(vote.Fact))
            {
                unit.Body.Add($"{unit.Scratch($"{vote.Name}.possibly")} := {possibly};");
            }
        }
    }

    /// <summary>The name of the vote's fact; its condition where the text has not come to it yet.</summary>
    public static string? Name(UnitText unit, Vote vote, bool surely)
    {
        string path = surely || !ConditionText.CanBeUnknown(vote.Fact) ? vote.Name : $"{vote.Name}.possibly";
        return unit.IsDeclared(path) ? unit.Names.Of(path) : null;
    }

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach (Vote vote in unit.Unit.Votes)
        {
            ConditionSite site = new(vote.Name);
            string[] unknown =
            [
                .. vote.Members.Where(ConditionText.CanBeUnknown).Select(member =>
                    $"({unit.Conditions.Possibly(member, site)} AND {ConditionText.Not(unit.Conditions.Surely(member, site))})"),
            ];
            if (unknown.Length > 0)
            {
                raise($"{vote.Name}.bad", vote.HasBadMemberInWords(), UnitText.Bracketed(unknown, "OR", "FALSE"));
            }

            if (vote.Differ is { } differ)
            {
                string timer = unit.Declare(VariableSection.Kept, $"{vote.Name}.differ", "TON", null, $"the members of {vote.Name} disagree");
                unit.Body.Add($"{timer}(IN := {unit.Conditions.Surely(vote.Disagreement, site)}, PT := {DurationText.Of(differ)});");
                raise($"{vote.Name}.differ", vote.DiffersInWords(), $"{timer}.Q");
            }
        }
    }
}
