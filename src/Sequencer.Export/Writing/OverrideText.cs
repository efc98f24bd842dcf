using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 0: protections that the operator has taken out of force, one at a time, for a time.</summary>
internal static class OverrideText
{
    public static void Write(UnitText unit)
    {
        if (unit.Unit.Overrides.IsEmpty)
        {
            return;
        }

        TextLines body = unit.Body;
        body.Section("0  Overrides: one at a time, for its time only");
        foreach (Override waiver in unit.Unit.Overrides)
        {
            Command(unit, waiver);
        }

        for (int index = 0; index < unit.Unit.Overrides.Length; index++)
        {
            Decide(unit, index);
        }
    }

    /// <summary>The protection is overridden in this scan; null where nothing may override it.</summary>
    public static string? Active(UnitText unit, string protection) =>
        unit.Unit.Overrides.Any(waiver => waiver.Protection == protection) ? InForce(unit, Path(protection)) : null;

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach (Override waiver in unit.Unit.Overrides)
        {
            string path = Path(waiver.Protection);
            raise(path, waiver.IsActiveInWords(), Active(unit, waiver.Protection) ?? "FALSE");
            raise($"{path}.expired", waiver.HasExpiredInWords(), unit.Names.Of($"{path}.expired"));
            raise($"{path}.refused", waiver.IsRefusedInWords(), unit.Names.Of($"{path}.is_refused"));
        }
    }

    private static void Command(UnitText unit, Override waiver)
    {
        TextLines body = unit.Body;
        string path = Path(waiver.Protection);
        long scans = unit.Scans(waiver.AtMost);
        string command = unit.Declare(VariableSection.Input, path, "BOOL", null, $"operator: override {waiver.Protection}");
        string role = unit.Declare(VariableSection.Input, $"role.{waiver.Role}", "BOOL", null, $"somebody with the role {waiver.Role} is there");
        string before = unit.Flag(VariableSection.Kept, $"{path}.before", $"override of {waiver.Protection} asked for in the scan before", initial: true);
        string active = unit.Flag(VariableSection.Kept, $"{path}.active", $"{waiver.Protection} is overridden");
        string clock = unit.Counter(VariableSection.Kept, $"{path}.clock", scans, $"scans that {waiver.Protection} has been overridden");
        string expired = unit.Flag(VariableSection.Retained, $"{path}.expired", "its time is over; until the command is taken back");
        body.Trace(waiver.Span, $"override of {waiver.Protection}, at most {waiver.AtMost}: {waiver.Reason}");
        body.Add($"{unit.Scratch($"{path}.asked")} := {command} AND (NOT {before});");
        body.Add($"{before} := {command};");
        body.Add(FormattableString.Invariant($"{expired} := {command} AND ({expired} OR ({active} AND ({clock} >= {scans})));"));
        body.Add(FormattableString.Invariant($"{unit.Scratch($"{path}.continues")} := {active} AND {command} AND {role} AND ({clock} < {scans});"));
    }

    private static void Decide(UnitText unit, int index)
    {
        TextLines body = unit.Body;
        Override waiver = unit.Unit.Overrides[index];
        string path = Path(waiver.Protection);
        IEnumerable<string> others = unit.Unit.Overrides.Select((other, place) =>
            place < index ? InForce(unit, Path(other.Protection)) : unit.Names.Of($"{Path(other.Protection)}.continues"));
        string granted = unit.Scratch($"{path}.granted");
        string clock = unit.Names.Of($"{path}.clock");
        string asked = unit.Names.Of($"{path}.asked");
        body.Add($"{granted} := {asked} AND {unit.Names.Of($"role.{waiver.Role}")} AND (NOT {UnitText.Bracketed(others, "OR", "FALSE")});");
        body.Add($"{unit.Scratch($"{path}.is_refused")} := {asked} AND (NOT {granted});");
        body.Add($"{InForce(unit, path)} := {unit.Names.Of($"{path}.continues")} OR {granted};");
        body.Open($"IF {InForce(unit, path)} THEN");
        body.Add(UnitText.CountUp(clock, unit.Scans(waiver.AtMost)));
        body.Else("ELSE");
        body.Add($"{clock} := 0;");
        body.Close("END_IF;");
    }

    private static string InForce(UnitText unit, string path) => unit.Names.Of($"{path}.active");

    private static string Path(string protection) => $"{protection}.override";
}
