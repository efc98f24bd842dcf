using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>A dose by amount: what is owed is judged before the state of the scan is known, what is given counted at its end.</summary>
internal static class AmountDoseText
{
    public static IEnumerable<string> Asks(UnitText unit, Step step, AmountDoseAction dose, Reaction reaction)
    {
        if (dose.Of is ReadingQuantity && reaction == Reaction.Hold)
        {
            yield return unit.Names.Of(Path(step, dose, "unusable"));
        }

        if (dose.Of is not null && reaction == dose.MaximumReaction)
        {
            yield return unit.Names.Of(Path(step, dose, "exhausted"));
        }
    }

    /// <summary>The dose is given, at the start of the scan.</summary>
    public static string Dosed(UnitText unit, DosedFact fact) => unit.Scratch(
        FormattableString.Invariant($"step{fact.Step}.dose_{fact.Output.Tag}.dosed"));

    /// <summary>What conditions and faults may ask about: from what is kept alone.</summary>
    public static void Judge(UnitText unit, Step step, AmountDoseAction dose)
    {
        TextLines body = unit.Body;
        string Scratch(string part) => unit.Scratch(Path(step, dose, part));
        long most = AmountDoseMeasure.Most(dose, unit.ScanMilliseconds);
        string given = Given(unit, step, dose);
        body.Clause(dose.Span, FormattableString.Invariant($"step {step.Number}, is any of it owed?"));
        string owes = Scratch("owes");
        string mayBegin = Scratch("may_begin");
        string inPulse = Pulse(unit, dose) > 0 ? $"({Left(unit, step, dose)} > 0)" : "FALSE";
        string booked = dose.Of is ReadingQuantity ? Booked(unit, step, dose) : "TRUE";
        body.Add($"{owes} := {Owes(unit, step, dose, given, most)};");
        string fits = FormattableString.Invariant($"(({given} + {Math.Max(1, Pulse(unit, dose))}) <= {most})");
        body.Add($"{mayBegin} := {booked} AND {owes} AND {fits};");
        string spent = dose.Of is null && QuantityMeasure.LargestDose(unit.Unit, dose.Output, unit.ScanMilliseconds) is long maximum
            ? FormattableString.Invariant($"({unit.Names.Of($"{dose.Output.Tag}.total")} >= {maximum})")
            : "FALSE";
        body.Add($"{Scratch("dosed")} := ({booked} AND (NOT {owes}) AND {ConditionText.Not(inPulse)}) OR {spent};");
        if (dose.Of is null)
        {
            return;
        }

        string atWork = $"{unit.StepAtStart(step.Number)} AND (State_At_Start = {StateText.Value(ProceduralState.Running)}){ClaimText.AndOwns(unit, step)}";
        body.Add($"{Scratch("exhausted")} := {atWork} AND {booked} AND {owes} AND {ConditionText.Not(inPulse)} AND (NOT {fits});");
        if (dose.Of is ReadingQuantity reading)
        {
            body.Add($"{Scratch("unusable")} := {atWork} AND (NOT {booked}) AND {ConditionText.Not(unit.Conditions.Usable(reading))};");
            body.Add($"{Scratch("books")} := {atWork} AND (NOT {booked}) AND {unit.Conditions.Usable(reading)};");
        }
    }

    /// <summary>Whether it gives in this scan.</summary>
    public static void Give(UnitText unit, Step step, AmountDoseAction dose)
    {
        string begins = unit.Names.Of(Path(step, dose, "may_begin"));
        string may = Pulse(unit, dose) > 0 ? $"(({Left(unit, step, dose)} > 0) OR {begins})" : begins;
        unit.Body.Add(
            $"{unit.Scratch(Path(step, dose, "gives"))} := {unit.StepNow(step.Number)} AND {unit.Works(step)} AND (NOT {unit.Names.Of("started")}) AND {may};");
    }

    public static string Gives(UnitText unit, Step step, AmountDoseAction dose) => unit.Names.Of(Path(step, dose, "gives"));

    /// <summary>At the end of the scan.</summary>
    public static void Count(UnitText unit, Step step, AmountDoseAction dose)
    {
        TextLines body = unit.Body;
        string given = Given(unit, step, dose);
        string on = unit.Names.Of(dose.Output.Tag);
        string started = unit.Names.Of("started");
        body.Trace(dose.Span, $"step {step.Number}: what {dose.Output.Tag} has given of its amount");
        body.Open($"IF {started} THEN");
        body.Add($"{given} := 0;");
        body.Else($"ELSIF {unit.StepNow(step.Number)} AND {on} THEN");
        body.Add(UnitText.CountUp(given, AmountDoseMeasure.Most(dose, unit.ScanMilliseconds)));
        body.Close("END_IF;");
        if (Pulse(unit, dose) is long pulse and > 0)
        {
            string left = Left(unit, step, dose);
            body.Open($"IF NOT {Gives(unit, step, dose)} THEN");
            body.Add($"{left} := 0;");
            body.Else("ELSE");
            body.Add(FormattableString.Invariant($"IF {left} = 0 THEN {left} := {pulse}; END_IF;"));
            body.Add($"IF {on} THEN {left} := {left} - 1; END_IF;");
            body.Close("END_IF;");
        }

        if (dose.Of is ReadingQuantity reading)
        {
            string booked = Booked(unit, step, dose);
            string books = unit.Names.Of(Path(step, dose, "books"));
            body.Add($"IF {books} THEN {Basis(unit, step, dose, reading)} := {unit.Names.Of($"{reading.Input.Tag}.held")}; END_IF;");
            body.Add($"{booked} := (NOT {started}) AND ({booked} OR {books});");
        }
    }

    public static string Path(Step step, AmountDoseAction dose, string part) =>
        FormattableString.Invariant($"step{step.Number}.dose_{dose.Output.Tag}.{part}");

    private static string Owes(UnitText unit, Step step, AmountDoseAction dose, string given, long most)
    {
        if (dose.Of is not { } of)
        {
            return FormattableString.Invariant($"({given} < {most})");
        }

        (long scans, long basis) = AmountDoseMeasure.Factors(dose, unit.ScanMilliseconds);
        string share = Times(basis, of is ReadingQuantity reading ? Basis(unit, step, dose, reading) : unit.Conditions.Steps(of));
        return Pulse(unit, dose) is long pulse and > 0
            ? FormattableString.Invariant($"({Times(scans, $"({given} + {pulse})")} <= {share})")
            : $"({Times(scans, given)} < {share})";
    }

    private static string Times(long factor, string value) => factor == 1 ? value : FormattableString.Invariant($"({factor} * {value})");

    private static long Pulse(UnitText unit, AmountDoseAction dose) => dose.Pulse is { } pulse ? unit.Scans(pulse) : 0;

    private static string Given(UnitText unit, Step step, AmountDoseAction dose) => unit.Counter(
        VariableSection.Retained,
        Path(step, dose, "given"),
        AmountDoseMeasure.Most(dose, unit.ScanMilliseconds),
        FormattableString.Invariant($"scans of delivery that step {step.Number} has given in this batch"));

    private static string Left(UnitText unit, Step step, AmountDoseAction dose) =>
        unit.Counter(VariableSection.Kept, Path(step, dose, "left"), Pulse(unit, dose), "scans of delivery left of the pulse");

    private static string Booked(UnitText unit, Step step, AmountDoseAction dose) =>
        unit.Flag(VariableSection.Retained, Path(step, dose, "booked"), "the reading that the amount is a share of is taken");

    private static string Basis(UnitText unit, Step step, AmountDoseAction dose, ReadingQuantity reading) => unit.Number(
        VariableSection.Retained,
        Path(step, dose, "basis"),
        reading.Input.Minimum,
        reading.Input.Maximum,
        reading.Input.Minimum,
        $"{reading.Input.Tag} when the dose began");
}
