using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// Section 7: from demand to what is written. Outputs that conditions of interlocks name come before the
/// outputs that these guard; the checker has refused circles.
/// </summary>
internal sealed class ProtectionText
{
    private readonly UnitText _unit;
    private readonly HashSet<string> _written = new(StringComparer.Ordinal);

    private ProtectionText(UnitText unit) => _unit = unit;

    public static void Write(UnitText unit)
    {
        unit.Body.Section("7  Protections: in force in every state and in manual");
        ProtectionText protections = new(unit);
        foreach (Output output in unit.Unit.Outputs)
        {
            RestText.Write(unit, output);
        }

        foreach (Output output in unit.Unit.Outputs)
        {
            protections.Final(output);
        }

        foreach (AnalogueOutput output in unit.Unit.AnalogueOutputs)
        {
            AnalogueText.Write(unit, output, protections.Blocks);
        }
    }

    public static string Refusals(UnitText unit, Permissive permissive, Output output) => unit.Counter(
        VariableSection.Kept, $"{permissive.Name}.{output.Tag}.refused", unit.Scans(permissive.Patience.GetValueOrDefault()), $"scans that {permissive.Name} has refused {output.Tag}");

    public static string Off(UnitText unit, Exclusion exclusion, Output output) => unit.Counter(
        VariableSection.Kept, $"{exclusion.Name}.{output.Tag}.off", unit.Scans(exclusion.Between), $"scans since {output.Tag} ended, for {exclusion.Name}");

    public static string Coil(UnitText unit, Output output) => unit.Declare(
        VariableSection.Output, output.Tag, "BOOL", output.DeEnergised ? "TRUE" : "FALSE", $"{output.Description}: {(output.Kind == OutputKind.Valve ? "open" : "running")}");

    /// <summary>The operator's switch to manual and his demand there.</summary>
    public static (string Manual, string Demand) Manual(UnitText unit, Output output) => (
        unit.Declare(VariableSection.Input, $"{output.Tag}.manual", "BOOL", null, $"operator: {output.Tag} in manual"),
        unit.Declare(VariableSection.Input, $"{output.Tag}.manual.demand", "BOOL", null, $"operator: {output.Tag} on, in manual"));

    private void Final(Output output)
    {
        if (!_written.Add(output.Tag))
        {
            return;
        }

        Interlock[] interlocks = [.. _unit.Unit.Interlocks.Where(interlock => Names(interlock.Outputs, output))];
        Permissive[] permissives = [.. _unit.Unit.Permissives.Where(permissive => Names(permissive.Outputs, output))];
        Exclusion[] exclusions = [.. _unit.Unit.Exclusions.Where(exclusion => Names(exclusion.Outputs, output))];
        IEnumerable<Output> needed = interlocks.SelectMany(interlock => Mentioned(interlock.Condition).Concat(interlock.Release is null ? [] : Mentioned(interlock.Release)))
            .Concat(permissives.SelectMany(permissive => Mentioned(permissive.Condition)))
            .Concat(exclusions.SelectMany(exclusion => exclusion.Outputs.TakeWhile(member => member.Tag != output.Tag)));
        foreach (Output other in needed)
        {
            Final(other);
        }

        Demand(output);
        List<string> blocks = [];
        foreach (Interlock interlock in interlocks)
        {
            blocks.Add(Blocks(interlock));
        }

        foreach (Exclusion exclusion in exclusions)
        {
            blocks.Add(Excluded(exclusion, output));
        }

        if (QuantityMeasure.LargestDose(_unit.Unit, output, _unit.ScanMilliseconds) is long maximum)
        {
            blocks.Add(FormattableString.Invariant($"({_unit.Names.Of($"{output.Tag}.total")} >= {maximum})"));
            decimal litres = (decimal)(QuantityMeasure.VolumeOfAScan(output, _unit.ScanMilliseconds) * maximum).ToDouble();
            _unit.Body.Comment(FormattableString.Invariant($"A batch gets at most {litres:0.###} L of it: {maximum} scans of delivery."));
        }

        Decide(output, permissives, UnitText.Bracketed(blocks, "OR", "FALSE"));
    }

    private void Demand(Output output)
    {
        (string manual, string wanted) = Manual(_unit, output);
        string demand = _unit.Scratch($"{output.Tag}.demand");
        TextLines body = _unit.Body;
        body.Blank();
        body.Clause(output.Span);
        body.Comment(Ruling(output));
        body.Open($"IF {manual} THEN");
        body.Add($"{demand} := {wanted};");
        body.Else($"ELSIF {_unit.Names.Of($"{output.Tag}.off")} THEN");
        body.Add($"{demand} := FALSE;");
        body.Else($"ELSIF {_unit.Names.Of($"{output.Tag}.on")} THEN");
        body.Add($"{demand} := TRUE;");
        if (output.Held is not null)
        {
            body.Else($"ELSIF {StateText.OneOf("State_Now", ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting)} THEN");
            body.Add($"{demand} := {RestText.Value(_unit, output, output.Held, "held")};");
        }

        body.Else("ELSE");
        body.Add($"{demand} := {RestText.Value(_unit, output, output.Safe, "safe")};");
        body.Close("END_IF;");
    }

    /// <summary>What asks for an output and what withholds it, in one line.</summary>
    private string Ruling(Output output)
    {
        IEnumerable<int> steps = _unit.Unit.Steps.Where(step => step.Actions.Any(action => Asks(action, output.Tag))).Select(step => step.Number);
        string asked = string.Join(", ", steps);
        string[] others = [.. _unit.Seen.Asked(output, on: true)];
        string[] withheld =
        [
            .. _unit.Unit.Interlocks.Where(interlock => Names(interlock.Outputs, output)).Select(interlock => interlock.Name),
            .. _unit.Unit.Exclusions.Where(exclusion => Names(exclusion.Outputs, output)).Select(exclusion => exclusion.Name),
        ];
        string[] parts =
        [
            asked.Length > 0 ? $"asked for by step {asked}" : others.Length > 0 ? "no step of this unit asks for it" : "no step asks for it: it has the value of its row",
            .. others.Length > 0 ? [$"asked for by another unit: {string.Join(", ", others)}"] : Array.Empty<string>(),
            withheld.Length > 0 ? $"blocked by {string.Join(", ", withheld)}" : "nothing blocks it",
            "an emergency overrules all",
        ];
        return string.Join("; ", parts);
    }

    private static bool Asks(StepAction action, string tag) => action switch
    {
        DriveAction drive => drive.Output.Tag == tag,
        KeepAction keep => keep.Output.Tag == tag,
        DoseAction dose => dose.Output.Tag == tag,
        AmountDoseAction dose => dose.Output.Tag == tag,
        _ => false,
    };

    private void Decide(Output output, Permissive[] permissives, string blocked)
    {
        TextLines body = _unit.Body;
        string name = Coil(_unit, output);
        string demand = _unit.Names.Of($"{output.Tag}.demand");
        if (permissives.Length > 0)
        {
            string starts = _unit.Scratch($"{output.Tag}.starts");
            body.Add($"{starts} := {demand} AND (NOT {_unit.Names.Of($"{output.Tag}.last")});");
            foreach (Permissive permissive in permissives)
            {
                Refuse(permissive, output, starts, demand);
            }
        }

        body.Open($"IF {FaultText.Asks(Reaction.Emergency)}_Trip THEN");
        body.Add($"{name} := {RestText.Value(_unit, output, output.Emergency, "emergency")};");
        if (blocked != "FALSE")
        {
            body.Else($"ELSIF {blocked} THEN");
            body.Add($"{name} := {RestText.Value(_unit, output, output.Safe, "safe")};");
        }

        body.Else("ELSE");
        body.Add($"{name} := {demand};");
        body.Close("END_IF;");
    }

    private void Refuse(Permissive permissive, Output output, string starts, string demand)
    {
        TextLines body = _unit.Body;
        body.Clause(permissive.Span, "looked at only on starting");
        ConditionSite site = new($"{permissive.Name}.{output.Tag}.refused", thisScansOutputs: true);
        string condition = _unit.Conditions.Surely(permissive.Condition, site);
        string refused = _unit.Scratch($"{permissive.Name}.{output.Tag}.refuses");
        body.Add($"{refused} := {starts} AND {ConditionText.Not(condition)};");
        body.Add($"IF {refused} THEN {demand} := FALSE; END_IF;");
        if (permissive.Patience is { } patience)
        {
            string clock = Refusals(_unit, permissive, output);
            body.Open($"IF {refused} THEN");
            body.Add(UnitText.CountUp(clock, _unit.Scans(patience)));
            body.Else("ELSE");
            body.Add($"{clock} := 0;");
            body.Close("END_IF;");
        }
    }

    private string Blocks(Interlock interlock)
    {
        string blocks = _unit.Scratch($"{interlock.Name}.blocks");
        if (!_written.Add(interlock.Name))
        {
            return blocks;
        }

        TextLines body = _unit.Body;
        body.Clause(interlock.Span);
        ConditionSite site = new(interlock.Name, thisScansOutputs: true);
        switch (interlock.Form)
        {
            case InterlockForm.While:
                string possibly = _unit.Conditions.Possibly(interlock.Condition, site);
                body.Add($"{blocks} := {possibly};");
                break;
            case InterlockForm.Unless:
                string surely = _unit.Conditions.Surely(interlock.Condition, site);
                body.Add($"{blocks} := {ConditionText.Not(surely)};");
                break;
            case InterlockForm.FromUntil:
                FromUntil(interlock, site, blocks);
                break;
            default:
                throw new System.Diagnostics.UnreachableException($"no text for {interlock.Form}");
        }

        if (OverrideText.Active(_unit, interlock.Name) is { } overridden)
        {
            body.Add($"{blocks} := {blocks} AND (NOT {overridden});");
        }

        return blocks;
    }

    private void FromUntil(Interlock interlock, ConditionSite site, string blocks)
    {
        TextLines body = _unit.Body;
        string latched = _unit.Flag(VariableSection.Retained, $"{interlock.Name}.latched", $"{interlock.Title}: blocks");
        Condition release = interlock.Release ?? throw new InvalidOperationException($"{interlock.Name} has no release");
        string from = _unit.Conditions.Possibly(interlock.Condition, site);
        string until = _unit.Conditions.Surely(release, new ConditionSite($"{interlock.Name}.release", thisScansOutputs: true));
        string reset = interlock.NeedsReset ? $" AND {StateMachineText.ResetOf(_unit, interlock.Group)}" : "";
        body.Open($"IF {from} THEN");
        body.Add($"{latched} := TRUE;");
        body.Else($"ELSIF {until}{reset} THEN");
        body.Add($"{latched} := FALSE;");
        body.Close("END_IF;");
        body.Add($"{blocks} := {latched};");
    }

    private string Excluded(Exclusion exclusion, Output output)
    {
        string excluded = _unit.Scratch($"{exclusion.Name}.{output.Tag}.blocks");
        long between = _unit.Scans(exclusion.Between);
        List<string> reasons = [];
        bool earlier = true;
        foreach (Output other in exclusion.Outputs)
        {
            if (other.Tag == output.Tag)
            {
                earlier = false;
                continue;
            }

            if (between > 0)
            {
                reasons.Add(FormattableString.Invariant($"({Off(_unit, exclusion, other)} < {between})"));
            }

            if (earlier)
            {
                reasons.Add(_unit.Names.Of(other.Tag));
            }
        }

        _unit.Body.Clause(exclusion.Span, $"for {output.Tag}");
        _unit.Body.Add($"{excluded} := {UnitText.Bracketed(reasons, "OR", "FALSE")};");
        return excluded;
    }

    private static bool Names(IEnumerable<Output> outputs, Output output) => outputs.Any(member => member.Tag == output.Tag);

    private static IEnumerable<Output> Mentioned(Condition condition) => condition switch
    {
        AllOf all => all.Conditions.SelectMany(Mentioned),
        AnyOf any => any.Conditions.SelectMany(Mentioned),
        Negation negation => Mentioned(negation.Condition),
        StaysFact stays => Mentioned(stays.Condition),
        LingersFact lingers => Mentioned(lingers.Condition),
        EdgeFact edge => Mentioned(edge.Condition),
        OutputFact { Kind: OutputFactKind.On or OutputFactKind.Proved } fact => QualifiedName.IsForeign(fact.Output.Tag) ? [] : [fact.Output],
        _ => [],
    };
}
