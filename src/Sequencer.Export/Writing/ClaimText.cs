using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Steps that wait for what they claim, in the block of their unit.</summary>
internal static class ClaimText
{
    /// <summary>The step has what it claims; TRUE where it claims nothing.</summary>
    public static string Owns(UnitText unit, Step step) => UnitText.Bracketed(step.Claims.Select(claim => Owns(unit, claim)), "AND", "TRUE");

    /// <summary>As <see cref="Owns(UnitText, Step)"/>, to be joined to a condition; empty where the step claims nothing.</summary>
    public static string AndOwns(UnitText unit, Step step) => step.Claims.IsEmpty ? "" : $" AND {Owns(unit, step)}";

    /// <summary>Steps that wait for what they claim are not left.</summary>
    public static string LeadsOn(UnitText unit, OrderedTransition transition, string condition)
    {
        Step[] claiming = [.. transition.From.Select(unit.StepOf).Where(step => !step.Claims.IsEmpty)];
        IEnumerable<string> owned = claiming.Select(step => step.OnlyIf is null ? Owns(unit, step) : $"({StepText.PassedOver(unit, step)} OR {Owns(unit, step)})");
        return claiming.Length == 0 ? condition : $"({condition}) AND {UnitText.Bracketed(owned, "AND", "TRUE")}";
    }

    /// <summary>Section 3: waits beyond their limits.</summary>
    public static void Faults(UnitText unit)
    {
        foreach ((Step step, Claim claim) in All(unit))
        {
            unit.Body.Trace(claim.Span, $"step {step.Number} waits for {claim.Equipment} at most {DurationText.Of(claim.Limit)}");
            unit.Body.Add(FormattableString.Invariant(
                $"{Over(unit, step, claim)} := {AtWork(unit, step)} AND {ConditionText.Not(Owns(unit, claim))} AND ({Clock(unit, step, claim)} >= {Limit(unit, claim)});"));
        }
    }

    public static IEnumerable<string> Asks(UnitText unit, Reaction reaction) =>
        All(unit).Where(entry => entry.Claim.Reaction == reaction).Select(entry => Over(unit, entry.Step, entry.Claim));

    public static void Alarms(UnitText unit, Action<string, string, string> raise)
    {
        foreach ((Step step, Claim claim) in All(unit))
        {
            raise(Path(step, claim), claim.Message, Over(unit, step, claim));
        }
    }

    /// <summary>Section 9: the clocks of waiting.</summary>
    public static void Finish(UnitText unit)
    {
        TextLines body = unit.Body;
        foreach ((Step step, Claim claim) in All(unit))
        {
            string clock = Clock(unit, step, claim);
            body.Open($"IF {IsActive(unit, step)} AND {UnitText.InState(step)} AND {ConditionText.Not(Owns(unit, claim))} THEN");
            body.Add($"IF NOT ({AtWork(unit, step)}) THEN {clock} := 0; END_IF;");
            body.Add(UnitText.CountUp(clock, Limit(unit, claim)));
            body.Else("ELSE");
            body.Add($"{clock} := 0;");
            body.Close("END_IF;");
        }
    }

    /// <summary>What the unit claims, for the block around.</summary>
    public static void Requests(UnitText unit)
    {
        foreach (string equipment in unit.Unit.ClaimedEquipment)
        {
            IEnumerable<string> wants = All(unit).Where(entry => entry.Claim.Equipment == equipment).Select(entry => entry.Claim.ReleasedWhileHeld
                ? $"({IsActive(unit, entry.Step)} AND {UnitText.InState(entry.Step)})"
                : IsActive(unit, entry.Step));
            unit.Body.Comment($"{equipment} is claimed while a step needs it.");
            unit.Body.Add($"{Request(unit, equipment)} := {UnitText.Bracketed(wants, "OR", "FALSE")};");
        }
    }

    /// <summary>The block's output that says that a step claims the equipment.</summary>
    public static string Request(UnitText unit, string equipment) =>
        unit.Declare(VariableSection.Shown, $"claims.{equipment}", "BOOL", null, $"{equipment} is claimed");

    private static IEnumerable<(Step Step, Claim Claim)> All(UnitText unit) =>
        unit.Unit.Steps.SelectMany(step => step.Claims.Select(claim => (step, claim)));

    private static string Owns(UnitText unit, Claim claim) => unit.Seen.Owner(claim.Equipment, unit.Unit.Name);

    private static long Limit(UnitText unit, Claim claim) => Math.Max(1, unit.Scans(claim.Limit));

    private static string AtWork(UnitText unit, Step step) => $"{unit.StepAtStart(step.Number)} AND (State_At_Start = {StateText.Value(ProceduralState.Running)})";

    private static string IsActive(UnitText unit, Step step) =>
        step.OnlyIf is null ? unit.StepNow(step.Number) : $"({unit.StepNow(step.Number)} AND (NOT {StepText.PassedOver(unit, step)}))";

    private static string Path(Step step, Claim claim) => FormattableString.Invariant($"step{step.Number}.claim{step.Claims.IndexOf(claim) + 1}");

    private static string Over(UnitText unit, Step step, Claim claim) => unit.Scratch($"{Path(step, claim)}.over");

    private static string Clock(UnitText unit, Step step, Claim claim) => unit.Counter(
        VariableSection.Retained,
        $"{Path(step, claim)}.clock",
        Limit(unit, claim),
        FormattableString.Invariant($"scans that step {step.Number} has waited for {claim.Equipment}"));
}
