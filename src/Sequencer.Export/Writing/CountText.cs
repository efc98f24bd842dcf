using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Counts, in steps of their resolution.</summary>
internal static class CountText
{
    /// <summary>The value at the start of the scan.</summary>
    public static string Value(UnitText unit, Count count) => Variable(unit, count, count.Name, count.Largest);

    /// <summary>Section 9: all counts see what was before any of them changes.</summary>
    public static void Write(UnitText unit)
    {
        foreach (Count count in unit.Unit.Counts)
        {
            unit.Body.Clause(count.Span);
            string comes = unit.Conditions.Surely(count.Each, new ConditionSite($"{count.Name}.each"));
            unit.Body.Add($"{unit.Scratch($"{count.Name}.comes")} := {comes};");
            if (count.SetWhen is { } when)
            {
                string sets = unit.Conditions.Surely(when, new ConditionSite($"{count.Name}.set"));
                unit.Body.Add($"{unit.Scratch($"{count.Name}.sets")} := {sets};");
            }
        }
    }

    /// <summary>After all that reads counts in this scan.</summary>
    public static void Finish(UnitText unit)
    {
        TextLines body = unit.Body;
        foreach (Count count in unit.Unit.Counts)
        {
            string value = count.Window is null ? Value(unit, count) : Part(unit, count, 0);
            string comes = unit.Names.Of($"{count.Name}.comes");
            if (count.Window is not null)
            {
                body.Add($"{unit.Scratch($"{count.Name}.before", "DINT")} := {value};");
            }

            if (count.SetWhen is not null)
            {
                body.Open($"IF {unit.Names.Of($"{count.Name}.sets")} THEN");
                body.Add(FormattableString.Invariant($"{value} := {count.SetTo};"));
                body.Else($"ELSIF {comes} THEN");
            }
            else
            {
                body.Open($"IF {comes} THEN");
            }

            body.Add(Step(count, value));
            body.Close("END_IF;");
            if (count.Window is { } window)
            {
                Roll(unit, count, window);
            }
        }
    }

    private static void Roll(UnitText unit, Count count, CountWindow window)
    {
        TextLines body = unit.Body;
        string[] parts = [.. Enumerable.Range(0, window.Parts + 1).Select(part => Part(unit, count, part))];
        string sum = Value(unit, count);
        long scans = window.ScansOfAPart(unit.ScanMilliseconds);
        string clock = unit.Counter(VariableSection.Retained, $"{count.Name}.clock", Math.Max(1, scans - 1), $"scans of this part of {DurationText.Of(window.Time)}");
        body.Add(FormattableString.Invariant($"{sum} := LIMIT(0, ({sum} + {parts[0]}) - {unit.Names.Of($"{count.Name}.before")}, {count.Largest});"));
        body.Open(FormattableString.Invariant($"IF {clock} >= {scans - 1} THEN"));
        body.Add(FormattableString.Invariant($"{sum} := LIMIT(0, {sum} - {parts[^1]}, {count.Largest});"));
        for (int part = parts.Length - 1; part > 0; part--)
        {
            body.Add($"{parts[part]} := {parts[part - 1]};");
        }

        body.Add($"{parts[0]} := 0;");
        body.Add($"{clock} := 0;");
        body.Else("ELSE");
        body.Add(UnitText.CountUp(clock, Math.Max(1, scans - 1)));
        body.Close("END_IF;");
    }

    private static string Step(Count count, string value)
    {
        bool adds = count.Change > 0;
        string room = adds
            ? FormattableString.Invariant($"{value} <= {count.Maximum - count.Change}")
            : FormattableString.Invariant($"{value} >= {count.Minimum - count.Change}");
        string step = Math.Abs(count.Change).ToString(CultureInfo.InvariantCulture);
        string end = (adds ? count.Maximum : count.Minimum).ToString(CultureInfo.InvariantCulture);
        return $"IF {room} THEN {value} := {value} {(adds ? "+" : "-")} {step}; ELSE {value} := {end}; END_IF;";
    }

    private static string Part(UnitText unit, Count count, int part) =>
        Variable(unit, count, FormattableString.Invariant($"{count.Name}.part{part}"), count.Maximum);

    private static string Variable(UnitText unit, Count count, string path, long most)
    {
        string step = (count.Resolution / count.Unit.Factor).ToDouble().ToString("0.######", CultureInfo.InvariantCulture);
        return unit.Number(VariableSection.Retained, path, count.Minimum, most, count.Initial, $"{count.Description}; one is {step} {count.Unit.Symbol}");
    }
}
