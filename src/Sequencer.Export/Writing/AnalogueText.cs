using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Analogue outputs: ramps move in the section of actions, the rest is decided with the protections.</summary>
internal static class AnalogueText
{
    public static void Ramps(UnitText unit, Step step)
    {
        foreach (RampAction ramp in step.Actions.OfType<RampAction>())
        {
            TextLines body = unit.Body;
            string value = RampValue(unit, step, ramp);
            body.Trace(ramp.Span, $"step {step.Number}: ramp of {ramp.Output.Tag}");
            body.Open($"IF {unit.Entered(step.Number)} THEN");
            body.Add(string.Create(CultureInfo.InvariantCulture, $"{value} := {ramp.From};"));
            if (ramp.Pace(unit.ScanMilliseconds).Remainder > 0)
            {
                body.Add($"{Rest(unit, step, ramp)} := 0;");
            }

            body.Close("END_IF;");
        }
    }

    public static void Write(UnitText unit, AnalogueOutput output, Func<Interlock, string> blocks)
    {
        TextLines body = unit.Body;
        string range = UnitText.Range(output.Minimum, output.Maximum);
        string safe = output.Safe.ToString(CultureInfo.InvariantCulture);
        double size = (output.Resolution / output.Unit.Factor).ToDouble();
        string name = unit.Declare(
            VariableSection.Output, output.Tag, range, safe, FormattableString.Invariant($"{output.Description}; one is {size} {output.Unit.Symbol}"));
        string last = unit.Number(VariableSection.Kept, $"{output.Tag}.last", output.Minimum, output.Maximum, output.Safe, $"{output.Tag} as written last scan");
        string manual = unit.Declare(VariableSection.Input, $"{output.Tag}.manual", "BOOL", null, $"operator: {output.Tag} in manual");
        string wanted = unit.Declare(VariableSection.Input, $"{output.Tag}.manual.demand", "DINT", null, FormattableString.Invariant($"operator: value of {output.Tag} in manual; one is {size} {output.Unit.Symbol}"));
        string demand = unit.Scratch($"{output.Tag}.demand", range);
        string[] blocked = [.. unit.Unit.Interlocks.Where(interlock => interlock.Analogues.Any(member => member.Tag == output.Tag)).Select(blocks)];
        body.Blank();
        body.Clause(output.Span);
        body.Add($"{demand} := {safe};");
        Demands(unit, output, demand);
        body.Add(string.Create(CultureInfo.InvariantCulture, $"IF {manual} THEN {demand} := LIMIT({output.Minimum}, {wanted}, {output.Maximum}); END_IF;"));
        if (output.MostAScan is long most)
        {
            body.Comment(string.Create(CultureInfo.InvariantCulture, $"by no more than {most * size:0.######} {output.Unit.Symbol} in a scan"));
            body.Add(string.Create(CultureInfo.InvariantCulture, $"{demand} := MAX({last} - {most}, MIN({demand}, {last} + {most}));"));
        }

        body.Open($"IF {FaultText.Asks(Reaction.Emergency)}_Trip THEN");
        body.Add(string.Create(CultureInfo.InvariantCulture, $"{name} := {output.Emergency};"));
        if (blocked.Length > 0)
        {
            body.Else($"ELSIF {UnitText.Bracketed(blocked, "OR", "FALSE")} THEN");
            body.Add($"{name} := {safe};");
        }

        body.Else("ELSE");
        body.Add($"{name} := {demand};");
        body.Close("END_IF;");
        body.Add($"{last} := {name};");
    }

    private static void Demands(UnitText unit, AnalogueOutput output, string demand)
    {
        TextLines body = unit.Body;
        foreach (Step step in unit.Unit.Steps)
        {
            string done = step.OnlyIf is null ? "" : $" AND (NOT {StepText.PassedOver(unit, step)})";
            string acts = $"{unit.StepNow(step.Number)} AND (State_Now = {StateText.Value(ProceduralState.Running)}){done}";
            foreach (SetAction set in step.Actions.OfType<SetAction>().Where(set => set.Output.Tag == output.Tag))
            {
                body.Clause(set.Span, FormattableString.Invariant($"step {step.Number}"));
                body.Add($"IF {acts} THEN {demand} := {Value(unit, set)}; END_IF;");
            }

            foreach (RampAction ramp in step.Actions.OfType<RampAction>().Where(ramp => ramp.Output.Tag == output.Tag))
            {
                body.Clause(ramp.Span, FormattableString.Invariant($"step {step.Number}"));
                body.Open($"IF {acts} THEN");
                body.Add($"{demand} := {RampValue(unit, step, ramp)};");
                Advance(unit, step, ramp);
                body.Close("END_IF;");
            }
        }
    }

    /// <summary>The way of the next scan: whole steps, and one more whenever the rest has filled a scan.</summary>
    private static void Advance(UnitText unit, Step step, RampAction ramp)
    {
        TextLines body = unit.Body;
        (long scans, long whole, long rest) = ramp.Pace(unit.ScanMilliseconds);
        if (rest == 0)
        {
            body.Add(Moved(unit, step, ramp, whole));
            return;
        }

        string left = Rest(unit, step, ramp);
        body.Open(FormattableString.Invariant($"IF {left} >= {scans - rest} THEN"));
        body.Add(FormattableString.Invariant($"{left} := {left} - {scans - rest};"));
        body.Add(Moved(unit, step, ramp, whole + 1));
        body.Else("ELSE");
        body.Add(FormattableString.Invariant($"{left} := {left} + {rest};"));
        if (whole > 0)
        {
            body.Add(Moved(unit, step, ramp, whole));
        }

        body.Close("END_IF;");
    }

    private static string Moved(UnitText unit, Step step, RampAction ramp, long way)
    {
        string value = RampValue(unit, step, ramp);
        return ramp.To >= ramp.From
            ? FormattableString.Invariant($"{value} := MIN({value} + {way}, {ramp.To});")
            : FormattableString.Invariant($"{value} := MAX({value} - {way}, {ramp.To});");
    }

    private static string Value(UnitText unit, SetAction set)
    {
        if (set.Value is LiteralQuantity literal)
        {
            return (literal.Value / set.Output.Resolution).ToInt64().ToString(CultureInfo.InvariantCulture);
        }

        long factor = (QuantityMeasure.Resolution(set.Value, unit.ScanMilliseconds) / set.Output.Resolution).ToInt64();
        string value = unit.Conditions.Steps(set.Value);
        return factor == 1 ? value : FormattableString.Invariant($"({factor} * {value})");
    }

    private static string RampValue(UnitText unit, Step step, RampAction ramp) => unit.Number(
        VariableSection.Retained,
        FormattableString.Invariant($"step{step.Number}.ramp_{ramp.Output.Tag}.value"),
        Math.Min(ramp.From, ramp.To),
        Math.Max(ramp.From, ramp.To),
        ramp.From,
        $"where the ramp of {ramp.Output.Tag} is");

    private static string Rest(UnitText unit, Step step, RampAction ramp) => unit.Counter(
        VariableSection.Retained,
        FormattableString.Invariant($"step{step.Number}.ramp_{ramp.Output.Tag}.rest"),
        ramp.Pace(unit.ScanMilliseconds).Scans - 1,
        "what is owed of the next step");
}
