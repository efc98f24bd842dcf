using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Export.Writing;

/// <summary>A monitored assumption: its breach latches until reset.</summary>
internal static class AssumptionText
{
    public static void Write(UnitText unit, AssumptionClause assumption)
    {
        unit.Body.Clause(assumption.Span, "watched");
        string kept = unit.Scratch($"{assumption.Name}.kept");
        switch (assumption.Fact)
        {
            case AssumedRate rate:
                Rate(unit, assumption.Name, rate, kept);
                break;
            case AssumedNever never:
                string broken = unit.Conditions.Surely(never.Condition, new ConditionSite(assumption.Name));
                unit.Body.Add($"{kept} := {ConditionText.Not(broken)};");
                break;
            default:
                throw new System.Diagnostics.UnreachableException($"no text for {assumption.Fact.GetType().Name}");
        }

        string breached = unit.Flag(VariableSection.Retained, $"{assumption.Name}.breached", $"assumption {assumption.Name} was broken; until reset");
        unit.Body.Open($"IF NOT {kept} THEN");
        unit.Body.Add($"{breached} := TRUE;");
        unit.Body.Else($"ELSIF {unit.Names.Of("reset.edge")} THEN");
        unit.Body.Add($"{breached} := FALSE;");
        unit.Body.Close("END_IF;");
    }

    /// <summary>
    /// The envelope: the least value so far plus what the rate allows since, in parts of the reading's
    /// resolution so that the rate is whole.
    /// </summary>
    private static void Rate(UnitText unit, string name, AssumedRate rate, string kept)
    {
        Rational perScan = rate.PerSecond * new Rational(unit.ScanMilliseconds, 1000) / rate.Input.Resolution;
        long parts = (long)perScan.Denominator;
        long allowed = (long)perScan.Numerator;
        long factor = rate.Rises ? parts : -parts;
        long maximum = rate.Rises ? parts * rate.Input.Maximum : -parts * rate.Input.Minimum;
        string channel = unit.Names.Of(rate.Input.Tag);
        string fault = unit.Names.Of($"{rate.Input.Tag}.fault");
        long minimum = rate.Rises ? parts * rate.Input.Minimum : -parts * rate.Input.Maximum;
        string envelope = unit.Number(
            VariableSection.Kept, $"{name}.envelope", minimum, maximum, maximum, FormattableString.Invariant($"bound on {rate.Input.Tag} by its rate, {parts} to one of the reading"));
        string value = unit.Scratch($"{name}.value", UnitText.Range(minimum, maximum));
        TextLines body = unit.Body;
        body.Add(FormattableString.Invariant($"{value} := {factor} * {channel};"));
        body.Add(FormattableString.Invariant($"{kept} := {fault} OR ({value} <= ({envelope} + {parts * rate.Tolerance}));"));
        body.Add($"IF (NOT {fault}) AND ({value} < {envelope}) THEN {envelope} := {value}; END_IF;");
        body.Add(FormattableString.Invariant($"{envelope} := MIN({envelope} + {allowed}, {maximum});"));
    }
}
