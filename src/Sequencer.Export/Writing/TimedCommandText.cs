using Sequencer.Text;

namespace Sequencer.Export.Writing;

/// <summary>Something that an operator with a role may have for a time: the command, its clock, how it ends.</summary>
/// <param name="Path">The name of the command.</param>
/// <param name="Role">Whose it is.</param>
/// <param name="Scans">How long it lasts at most.</param>
/// <param name="What">What he asks for, in a few words.</param>
/// <param name="Span">Where it is written.</param>
/// <param name="Reason">The line above the text.</param>
internal sealed record TimedCommandText(string Path, string Role, long Scans, string What, SourceSpan Span, string Reason)
{
    /// <summary>Reads all commands before any is decided.</summary>
    public static void Command(UnitText unit, TimedCommandText timed)
    {
        TextLines body = unit.Body;
        (string path, long scans) = (timed.Path, timed.Scans);
        string command = unit.Declare(VariableSection.Input, path, "BOOL", null, $"operator: {timed.What}");
        string role = unit.Declare(VariableSection.Input, $"role.{timed.Role}", "BOOL", null, $"somebody with the role {timed.Role} is there");
        string before = unit.Flag(VariableSection.Kept, $"{path}.before", $"{timed.What}: asked for in the scan before", initial: true);
        string active = unit.Flag(VariableSection.Kept, $"{path}.active", $"{timed.What}: in force");
        string clock = unit.Counter(VariableSection.Kept, $"{path}.clock", scans, $"{timed.What}: scans in force");
        string expired = unit.Flag(VariableSection.Retained, $"{path}.expired", "its time is over; until the command is taken back");
        body.Trace(timed.Span, timed.Reason);
        body.Add($"{unit.Scratch($"{path}.asked")} := {command} AND (NOT {before});");
        body.Add($"{before} := {command};");
        body.Add(FormattableString.Invariant($"{expired} := {command} AND ({expired} OR ({active} AND ({clock} >= {scans})));"));
        body.Add(FormattableString.Invariant($"{unit.Scratch($"{path}.continues")} := {active} AND {command} AND {role} AND ({clock} < {scans});"));
    }

    /// <summary>One at a time, the first written of those that are asked for in one scan.</summary>
    public static void Decide(UnitText unit, IReadOnlyList<TimedCommandText> all, int index, string? only = null)
    {
        TextLines body = unit.Body;
        TimedCommandText timed = all[index];
        string path = timed.Path;
        // What those written before are granted in this scan, and what all others go on with.
        IEnumerable<string> taken = all.Select((other, place) => place < index
            ? $"({unit.Names.Of($"{other.Path}.continues")} OR {unit.Names.Of($"{other.Path}.granted")})"
            : unit.Names.Of($"{other.Path}.continues"));
        string granted = unit.Scratch($"{path}.granted");
        string clock = unit.Names.Of($"{path}.clock");
        string asked = unit.Names.Of($"{path}.asked");
        string also = only is null ? "" : $" AND {only}";
        body.Add($"{granted} := {asked} AND {unit.Names.Of($"role.{timed.Role}")}{also} AND (NOT {UnitText.Bracketed(taken, "OR", "FALSE")});");
        body.Add($"{unit.Scratch($"{path}.is_refused")} := {asked} AND (NOT {granted});");
        body.Add($"{InForce(unit, path)} := ({unit.Names.Of($"{path}.continues")}{also}) OR {granted};");
        body.Open($"IF {InForce(unit, path)} THEN");
        body.Add(UnitText.CountUp(clock, timed.Scans));
        body.Else("ELSE");
        body.Add($"{clock} := 0;");
        body.Close("END_IF;");
    }

    public static string InForce(UnitText unit, string path) => unit.Names.Of($"{path}.active");

    public static void Alarms(UnitText unit, string path, (string IsActive, string HasExpired, string IsRefused) words, Action<string, string, string> raise)
    {
        raise(path, words.IsActive, InForce(unit, path));
        raise($"{path}.expired", words.HasExpired, unit.Names.Of($"{path}.expired"));
        raise($"{path}.refused", words.IsRefused, unit.Names.Of($"{path}.is_refused"));
    }
}
