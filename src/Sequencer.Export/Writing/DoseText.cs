using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>A dose: wait, measure, pulse. The measurement is taken before the state of the scan is known, the pulse after.</summary>
internal static class DoseText
{
    public static string Path(Step step, DoseAction dose, string part) =>
        FormattableString.Invariant($"step{step.Number}.dose_{dose.Output.Tag}.{part}");

    public static IEnumerable<string> Asks(UnitText unit, Step step, DoseAction dose, Reaction reaction)
    {
        if (reaction == Reaction.Hold)
        {
            yield return unit.Names.Of(Path(step, dose, "unusable"));
        }

        if (reaction == dose.MaximumReaction)
        {
            yield return unit.Names.Of(Path(step, dose, "exhausted"));
        }

        if (reaction == dose.NoResponseReaction)
        {
            yield return unit.Names.Of(Path(step, dose, "no_response"));
        }
    }

    public static void Measure(UnitText unit, Step step, DoseAction dose)
    {
        TextLines body = unit.Body;
        string Scratch(string part, string type = "BOOL") => unit.Scratch(Path(step, dose, part), type);
        string pulsing = unit.Flag(VariableSection.Kept, Path(step, dose, "pulsing"), "a pulse is being given");
        string clock = unit.Counter(VariableSection.Kept, Path(step, dose, "clock"), Longest(unit, dose), "scans of the pulse or of the wait so far");
        string misses = unit.Counter(VariableSection.Kept, Path(step, dose, "misses"), dose.NoResponsePulses, "pulses in a row without response");
        string measured = unit.Flag(VariableSection.Kept, Path(step, dose, "measured"), "a pulse has been given in this activation");
        string reference = unit.Number(
            VariableSection.Kept, Path(step, dose, "reference"), dose.Signal.Minimum, dose.Signal.Maximum, dose.Signal.Minimum, $"{dose.Signal.Tag} before the last pulse");
        ReadingQuantity reading = new(dose.Signal, dose.Span);
        string value = unit.Names.Of($"{dose.Signal.Tag}.held");
        body.Clause(dose.Span, FormattableString.Invariant($"step {step.Number}, is a pulse due?"));
        string due = Scratch("due");
        body.Add(FormattableString.Invariant(
            $"{due} := {unit.StepAtStart(step.Number)} AND (State_At_Start = {StateText.Value(ProceduralState.Running)}){ClaimText.AndOwns(unit, step)} AND (NOT {pulsing}) AND ({clock} >= {unit.Scans(dose.Wait)});"));
        string usable = unit.Conditions.Usable(reading, dose.Target);
        body.Add($"{Scratch("unusable")} := {due} AND {ConditionText.Not(usable)};");
        string falls = Scratch("short");
        body.Add($"{falls} := {due} AND {usable} AND {Short(unit, dose)};");
        string isFine = Scratch("is_fine");
        body.Add($"{isFine} := {Fine(unit, dose)};");
        string count = Scratch("new_misses", UnitText.Range(0, dose.NoResponsePulses));
        long change = (((LiteralQuantity)dose.NoResponseChange).Value / dose.Signal.Resolution).ToInt64();
        string moved = Raises(dose) ? $"({value} - {reference})" : $"({reference} - {value})";
        body.Open(FormattableString.Invariant($"IF {measured} AND ({moved} < {change}) THEN"));
        body.Add(FormattableString.Invariant($"{count} := MIN({misses} + 1, {dose.NoResponsePulses});"));
        body.Else("ELSE");
        body.Add($"{count} := 0;");
        body.Close("END_IF;");
        string size = Scratch("size", UnitText.Range(0, Longest(unit, dose)));
        body.Add(FormattableString.Invariant($"IF {isFine} THEN {size} := {FinePulse(unit, dose)}; ELSE {size} := {unit.Scans(dose.Pulse)}; END_IF;"));
        string noResponse = Scratch("no_response");
        string exhausted = Scratch("exhausted");
        string total = unit.Names.Of($"{dose.Output.Tag}.total");
        long maximum = QuantityMeasure.ScansWithin(dose.Output, dose.Maximum, unit.ScanMilliseconds);
        body.Add(FormattableString.Invariant($"{noResponse} := {falls} AND ({count} >= {dose.NoResponsePulses});"));
        body.Add(FormattableString.Invariant($"{exhausted} := {falls} AND (NOT {noResponse}) AND (({total} + {size}) > {maximum});"));
        body.Add($"{Scratch("may_begin")} := {falls} AND (NOT {noResponse}) AND (NOT {exhausted});");
    }

    public static void Pulse(UnitText unit, Step step, DoseAction dose)
    {
        TextLines body = unit.Body;
        string Name(string part) => unit.Names.Of(Path(step, dose, part));
        string works = unit.Scratch(Path(step, dose, "works"));
        string goes = unit.Scratch(Path(step, dose, "goes"));
        string continues = unit.Scratch(Path(step, dose, "continues"));
        string begins = unit.Scratch(Path(step, dose, "begins"));
        string pulse = unit.Scratch(Path(step, dose, "pulse"));
        string clock = Name("clock");
        string pulsing = Name("pulsing");
        string fine = unit.Flag(VariableSection.Kept, Path(step, dose, "fine"), "the pulse is a fine one");
        string length = unit.Scratch(Path(step, dose, "length"), UnitText.Range(0, Longest(unit, dose)));
        body.Trace(dose.Span, $"step {step.Number}: {dose.Output.Tag} gives its pulses");
        body.Add($"{works} := {unit.StepNow(step.Number)} AND {unit.Works(step)};");
        body.Add($"{goes} := {works} AND (NOT {unit.Entered(step.Number)});");
        body.Add(FormattableString.Invariant($"IF {fine} THEN {length} := {FinePulse(unit, dose)}; ELSE {length} := {unit.Scans(dose.Pulse)}; END_IF;"));
        body.Add($"{continues} := {pulsing} AND ({clock} < {length});");
        body.Add($"{begins} := {goes} AND {Name("may_begin")};");
        body.Add($"{pulse} := {goes} AND ({begins} OR {continues});");
        body.Add($"IF {begins} OR (NOT {goes}) OR ({pulsing} AND (NOT {continues})) THEN {clock} := 0; END_IF;");
        body.Add(FormattableString.Invariant($"IF {works} AND ({clock} < {Longest(unit, dose)}) THEN {clock} := {clock} + 1; END_IF;"));
        body.Open($"IF {begins} THEN");
        body.Add($"{fine} := {Name("is_fine")};");
        body.Add($"{Name("reference")} := {unit.Names.Of($"{dose.Signal.Tag}.held")};");
        body.Add($"{Name("misses")} := {Name("new_misses")};");
        body.Add($"{Name("measured")} := TRUE;");
        body.Close("END_IF;");
        body.Add($"IF NOT {pulse} THEN {fine} := FALSE; END_IF;");
        body.Open($"IF NOT {goes} THEN");
        body.Add($"{Name("measured")} := FALSE;");
        body.Add($"{Name("misses")} := 0;");
        body.Close("END_IF;");
        body.Add($"{pulsing} := {pulse};");
    }

    private static long Longest(UnitText unit, DoseAction dose) =>
        Math.Max(unit.Scans(dose.Wait), Math.Max(unit.Scans(dose.Pulse), FinePulse(unit, dose)));

    private static bool Raises(DoseAction dose) => dose.Output.Delivery?.Reagent.Effect != ReagentEffect.Lowers;

    private static long FinePulse(UnitText unit, DoseAction dose) => unit.Scans(dose.FinePulse ?? dose.Pulse);

    private static string Short(UnitText unit, DoseAction dose)
    {
        string[] sides = unit.Conditions.InCommonMeasure(new ReadingQuantity(dose.Signal, dose.Span), dose.Target);
        return Raises(dose) ? $"({sides[0]} < {sides[1]})" : $"({sides[0]} > {sides[1]})";
    }

    private static string Fine(UnitText unit, DoseAction dose)
    {
        if (dose.FineWithin is null)
        {
            return "FALSE";
        }

        string[] sides = unit.Conditions.InCommonMeasure(new ReadingQuantity(dose.Signal, dose.Span), dose.Target, dose.FineWithin);
        string distance = Raises(dose) ? $"({sides[1]} - {sides[0]})" : $"({sides[0]} - {sides[1]})";
        return $"({distance} <= {sides[2]})";
    }
}
