using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 9: totals, clocks and memories at the end of the scan.</summary>
internal static class ClosingText
{
    /// <summary>Memories that conditions read from the start of the scan on.</summary>
    public static void Declare(UnitText unit)
    {
        foreach (Output output in unit.Unit.Outputs)
        {
            ProtectionText.Coil(unit, output);
            unit.Flag(VariableSection.Kept, $"{output.Tag}.last", $"{output.Tag} as written last scan", output.DeEnergised);
            if (output.Delivery is not null)
            {
                double millilitres = (QuantityMeasure.VolumeOfAScan(output, unit.ScanMilliseconds) * 1000).ToDouble();
                unit.Counter(VariableSection.Retained, $"{output.Tag}.total", QuantityMeasure.LargestTotal, FormattableString.Invariant($"scans of delivery in this batch, {millilitres:0.###} mL each"));
            }
        }

        foreach (Parameter parameter in unit.Unit.Parameters)
        {
            unit.Number(VariableSection.Retained, $"{parameter.Name}.batch", parameter.Minimum, parameter.Maximum, parameter.Default, $"{parameter.Description}: as the batch was started");
        }

        foreach (Latch latch in unit.Unit.Latches)
        {
            unit.Flag(latch.Retained ? VariableSection.Retained : VariableSection.Kept, latch.Name, latch.Description);
        }
    }

    /// <summary>A fact that the unit publishes, as it was in the last scan.</summary>
    public static string Fact(UnitText unit, string fact, bool surely) => surely
        ? unit.Flag(VariableSection.Retained, fact, $"published: {Description(unit, fact)}")
        : unit.Flag(VariableSection.Retained, $"{fact}.possibly", $"published: {Description(unit, fact)}, or unknown");

    /// <summary>What conditions must see as it was at the start of the scan, though it changes in the scan.</summary>
    public static void KeepBefores(UnitText unit, TextLines head)
    {
        foreach (Trip trip in unit.Unit.Trips)
        {
            Before(unit, head, $"{trip.Name}.before", FaultText.Latched(unit, trip));
        }

        foreach (Output output in unit.Unit.Outputs.Where(output => output.Confirmation is not null))
        {
            Before(unit, head, $"{output.Tag}.discrepancy.before", FaultText.Latched(unit, output));
        }
    }

    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("9  Totals, clocks and memories count this scan");
        CountText.Write(unit);
        Judge(unit, unit.Unit.Latches);
        Judge(unit, unit.Unit.Facts);
        Change(unit, unit.Unit.Latches);
        Change(unit, unit.Unit.Facts);
        PairText.Finish(unit);
        foreach (Step step in unit.Unit.Steps)
        {
            RecordText.Write(unit, step);
        }

        foreach (Exclusion exclusion in unit.Unit.Exclusions)
        {
            foreach (Output output in exclusion.Outputs)
            {
                string off = ProtectionText.Off(unit, exclusion, output);
                if (unit.Scans(exclusion.Between) == 0)
                {
                    body.Add($"{off} := 0;");
                    continue;
                }

                body.Open($"IF {unit.Names.Of(output.Tag)} THEN");
                body.Add($"{off} := 0;");
                body.Else("ELSE");
                body.Add(UnitText.CountUp(off, unit.Scans(exclusion.Between)));
                body.Close("END_IF;");
            }
        }

        Outputs(unit);
        string started = unit.Names.Of("started");
        if (!unit.Unit.Parameters.IsEmpty)
        {
            body.Comment("The batch works with a copy of the settings taken at its start.");
            body.Open($"IF {started} THEN");
            foreach (Parameter parameter in unit.Unit.Parameters)
            {
                body.Add(FormattableString.Invariant(
                    $"{unit.Names.Of($"{parameter.Name}.batch")} := LIMIT({parameter.Minimum}, {unit.Names.Of($"{parameter.Name}.setting")}, {parameter.Maximum});"));
            }

            body.Close("END_IF;");
        }

        foreach (Step step in unit.Unit.Steps)
        {
            ShareText.Count(unit, step);
            foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>())
            {
                AmountDoseText.Count(unit, step, dose);
            }
        }

        ClaimText.Finish(unit);
        CountText.Finish(unit);
        StartText.Finish(unit);
        PromptText.Finish(unit);
        StepText.Finish(unit);
        StateMachineText.Finish(unit);
        CalibrationText.Finish(unit);
        MemoryText.Finish(unit);
    }

    private static void Before(UnitText unit, TextLines head, string path, string latch)
    {
        if (unit.Names.ByPath.TryGetValue(path, out string? before))
        {
            head.Add($"{before} := {latch};");
        }
    }

    private static string Description(UnitText unit, string fact) => unit.Unit.Facts.First(one => one.Name == fact).Description;

    /// <summary>All facts and latches are judged before any changes, since one may name another.</summary>
    private static void Judge(UnitText unit, IEnumerable<PublishedFact> facts)
    {
        foreach (PublishedFact fact in facts)
        {
            unit.Body.Clause(fact.Span);
            ConditionSite site = new(fact.Name);
            string surely = unit.Conditions.Surely(fact.Condition, site);
            unit.Body.Add($"{unit.Scratch($"{fact.Name}.holds")} := {surely};");
            string possibly = unit.Conditions.Possibly(fact.Condition, site);
            unit.Body.Add($"{unit.Scratch($"{fact.Name}.may_hold")} := {possibly};");
        }
    }

    private static void Change(UnitText unit, IEnumerable<PublishedFact> facts)
    {
        foreach (PublishedFact fact in facts)
        {
            unit.Body.Add($"{Fact(unit, fact.Name, surely: true)} := {unit.Names.Of($"{fact.Name}.holds")};");
            unit.Body.Add($"{Fact(unit, fact.Name, surely: false)} := {unit.Names.Of($"{fact.Name}.may_hold")};");
        }
    }

    private static void Outputs(UnitText unit)
    {
        TextLines body = unit.Body;
        foreach (Output output in unit.Unit.Outputs)
        {
            string name = unit.Names.Of(output.Tag);
            if (output.Delivery is not null)
            {
                string total = unit.Names.Of($"{output.Tag}.total");
                body.Add($"IF {unit.Names.Of("started")} THEN {total} := 0; END_IF;");
                body.Add(FormattableString.Invariant($"IF {name} AND ({total} < {QuantityMeasure.LargestTotal}) THEN {total} := {total} + 1; END_IF;"));
            }

            body.Add($"{unit.Names.Of($"{output.Tag}.last")} := {name};");
        }
    }

    /// <summary>Before the outputs' memories change too, so that no order matters.</summary>
    private static void Judge(UnitText unit, IEnumerable<Latch> latches)
    {
        TextLines body = unit.Body;
        foreach (Latch latch in latches)
        {
            body.Clause(latch.Span, "clearing wins");
            string set = unit.Conditions.Surely(latch.Set, new ConditionSite($"{latch.Name}.set"));
            body.Add($"{unit.Scratch($"{latch.Name}.sets")} := {set};");
            string clear = unit.Conditions.Possibly(latch.Clear, new ConditionSite($"{latch.Name}.clear"));
            body.Add($"{unit.Scratch($"{latch.Name}.clears")} := {clear};");
        }
    }

    private static void Change(UnitText unit, IEnumerable<Latch> latches)
    {
        foreach (Latch latch in latches)
        {
            string name = unit.Names.Of(latch.Name);
            unit.Body.Add($"{name} := (NOT {unit.Names.Of($"{latch.Name}.clears")}) AND ({name} OR {unit.Names.Of($"{latch.Name}.sets")});");
        }
    }
}
