using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>The rows of values that an output has when nobody demands it.</summary>
internal static class RestText
{
    public static void Write(UnitText unit, Output output)
    {
        WriteRow(unit, output, output.Safe, "safe");
        WriteRow(unit, output, output.Emergency, "emergency");
        if (output.Held is not null)
        {
            WriteRow(unit, output, output.Held, "held");
        }
    }

    public static string Value(UnitText unit, Output output, RestValue rest, string row)
    {
        if (rest.Last)
        {
            return unit.Names.Of($"{output.Tag}.last");
        }

        return rest.While is null ? Literal(rest.Value) : unit.Names.Of($"{output.Tag}.{row}");
    }

    private static void WriteRow(UnitText unit, Output output, RestValue rest, string row)
    {
        if (rest.Last || rest.While is null)
        {
            return;
        }

        string name = unit.Scratch($"{output.Tag}.{row}");
        ConditionSite site = new($"{output.Tag}.{row}");
        TextLines body = unit.Body;
        body.Trace(rest.Span, $"{output.Tag}, {row} value");
        string surely = unit.Conditions.Surely(rest.While, site);
        string possibly = unit.Conditions.Possibly(rest.While, site);
        body.Open($"IF {surely} THEN");
        body.Add($"{name} := {Literal(rest.Value)};");
        if (ConditionText.CanBeUnknown(rest.While))
        {
            body.Else($"ELSIF {possibly} THEN");
            body.Add($"{name} := {Literal(rest.IfBad)};");
        }

        body.Else("ELSE");
        body.Add($"{name} := {Literal(rest.Otherwise)};");
        body.Close("END_IF;");
    }

    private static string Literal(bool value) => value ? "TRUE" : "FALSE";
}
