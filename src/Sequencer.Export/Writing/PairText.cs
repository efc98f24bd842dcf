using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Which of two devices is on duty, decided before the steps demand anything.</summary>
internal static class PairText
{
    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        foreach (DutyPair pair in unit.Unit.Pairs)
        {
            body.Clause(pair.Span);
            string first = Available(unit, pair.First);
            string other = Available(unit, pair.Second);
            string second = unit.Flag(VariableSection.Retained, $"{pair.Name}.second", $"{pair.Second.Tag} is on duty", pair.SecondAtFirst);
            string changes = unit.Scratch($"{pair.Name}.changes");
            if (pair.Rotates)
            {
                body.Add($"IF {unit.Names.Of("started")} THEN {second} := NOT {second}; END_IF;");
            }

            body.Add($"{changes} := ({second} AND {first} AND (NOT {other})) OR ((NOT {second}) AND (NOT {first}) AND {other});");
            body.Add($"IF {changes} THEN {second} := NOT {second}; END_IF;");
        }
    }

    public static string OnDuty(UnitText unit, DutyFact fact)
    {
        string second = unit.Names.Of($"{fact.Pair}.second");
        return fact.First ? $"(NOT {second})" : second;
    }

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach (DutyPair pair in unit.Unit.Pairs)
        {
            Output[] members = [pair.First, pair.Second];
            string asked = UnitText.Bracketed(members.Select(member => $"({unit.Names.Of($"{member.Tag}.on")} AND (NOT {unit.Names.Of($"{member.Tag}.off")}))"), "OR", "FALSE");
            string none = string.Join(" AND ", members.Select(member => $"(NOT {unit.Names.Of($"{member.Tag}.available")})"));
            raise($"{pair.Name}.changed", pair.HasChangedInWords(), unit.Names.Of($"{pair.Name}.changes"));
            raise($"{pair.Name}.none", pair.HasNoneInWords(), $"{asked} AND {none}");
        }
    }

    /// <summary>What interlocks did in this scan counts for availability in the next.</summary>
    public static void Finish(UnitText unit)
    {
        foreach (Output member in unit.Unit.Pairs.SelectMany(pair => new[] { pair.First, pair.Second }))
        {
            IEnumerable<string> blocks = unit.Unit.Interlocks.Where(interlock => interlock.Outputs.Any(output => output.Tag == member.Tag))
                .Select(interlock => unit.Names.Of($"{interlock.Name}.blocks"));
            unit.Body.Add($"{Barred(unit, member)} := {UnitText.Bracketed(blocks, "OR", "FALSE")};");
        }
    }

    private static string Available(UnitText unit, Output member)
    {
        string available = unit.Scratch($"{member.Tag}.available");
        unit.Body.Add($"{available} := NOT ({FaultText.Latched(unit, member)} OR {ProtectionText.Manual(unit, member).Manual} OR {Barred(unit, member)});");
        return available;
    }

    private static string Barred(UnitText unit, Output member) =>
        unit.Flag(VariableSection.Kept, $"{member.Tag}.barred", $"{member.Tag} was interlocked last scan");
}
