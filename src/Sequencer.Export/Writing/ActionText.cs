using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 6: what the active steps ask of the outputs.</summary>
internal static class ActionText
{
    public static string Elapsed(UnitText unit, Step step) => unit.Counter(
        UnitText.Memory(step), FormattableString.Invariant($"step{step.Number}.elapsed"), LongestAction(unit, step), "scans since its activation, while it works");

    public static long LongestAction(UnitText unit, Step step) => step.Actions.OfType<DriveAction>()
        .Select(action => action.ScansFromActivation(unit.ScanMilliseconds))
        .DefaultIfEmpty(0)
        .Max();

    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("6  Actions: what the active steps ask for");
        foreach (Step step in unit.Unit.Steps)
        {
            foreach (PromptAction prompt in step.Actions.OfType<PromptAction>())
            {
                PromptText.Write(unit, step, prompt);
            }

            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                DoseText.Pulse(unit, step, dose);
            }

            foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>())
            {
                AmountDoseText.Give(unit, step, dose);
            }
        }

        foreach (Step step in unit.Unit.Steps)
        {
            AnalogueText.Ramps(unit, step);
            foreach (KeepAction keep in step.Actions.OfType<KeepAction>())
            {
                Keep(unit, step, keep);
            }
        }

        Dictionary<DriveAction, string> extras = Extras(unit);
        foreach (Output output in unit.Unit.Outputs.Concat(unit.Unit.DrivenElsewhere))
        {
            IEnumerable<string> pulses = unit.Unit.Steps.SelectMany(step => step.Actions.OfType<DoseAction>()
                .Where(dose => dose.Output.Tag == output.Tag)
                .Select(dose => unit.Names.Of(DoseText.Path(step, dose, "pulse"))));
            IEnumerable<string> amounts = unit.Unit.Steps.SelectMany(step => step.Actions.OfType<AmountDoseAction>()
                .Where(dose => dose.Output.Tag == output.Tag)
                .Select(dose => AmountDoseText.Gives(unit, step, dose)));
            body.Add($"{unit.Scratch($"{output.Tag}.on")} := {UnitText.Bracketed([.. pulses, .. amounts, .. unit.Seen.Asked(output, on: true)], "OR", "FALSE")};");
            body.Add($"{unit.Scratch($"{output.Tag}.off")} := {UnitText.Bracketed(unit.Seen.Asked(output, on: false), "OR", "FALSE")};");
        }

        foreach (ProceduralState state in unit.Unit.StatesWithSteps)
        {
            body.Open($"IF State_Now = {StateText.Value(state)} THEN");
            foreach (int region in unit.RegionsOf(state))
            {
                Branch(unit, region, extras);
            }

            body.Close("END_IF;");
        }

        KeepAction[] kept = [.. unit.Unit.Steps.SelectMany(step => step.Actions.OfType<KeepAction>())];
        if (kept.Length > 0)
        {
            body.Open($"IF State_Now = {StateText.Value(ProceduralState.Running)} THEN");
            foreach (Step step in unit.Unit.Steps)
            {
                foreach (KeepAction keep in step.Actions.OfType<KeepAction>())
                {
                    body.Add($"IF {Kept(unit, step, keep)} THEN {unit.Names.Of($"{keep.Output.Tag}.{(keep.On ? "on" : "off")}")} := TRUE; END_IF;");
                }
            }

            body.Close("END_IF;");
        }
    }

    /// <summary>Set at the entry of its step, reset at the entry of its end and by every end of the batch.</summary>
    private static void Keep(UnitText unit, Step step, KeepAction keep)
    {
        TextLines body = unit.Body;
        string kept = Kept(unit, step, keep);
        string inProgress = StateText.OneOf("State_Now", ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting);
        body.Trace(keep.Span, $"{keep.Output.Tag} is kept from step {step.Number} to step {keep.Until}");
        body.Add($"IF {unit.Names.Of("started")} THEN {kept} := FALSE; END_IF;");
        body.Add($"IF {unit.Entered(step.Number)} THEN {kept} := TRUE; END_IF;");
        body.Add($"IF {unit.Entered(keep.Until)} OR (NOT {inProgress}) THEN {kept} := FALSE; END_IF;");
    }

    private static string Kept(UnitText unit, Step step, KeepAction keep) => unit.Flag(
        VariableSection.Retained, FormattableString.Invariant($"step{step.Number}.keep_{keep.Output.Tag}"), FormattableString.Invariant($"{keep.Output.Tag} is kept until step {keep.Until}"));

    private static void Branch(UnitText unit, int region, Dictionary<DriveAction, string> extras)
    {
        TextLines body = unit.Body;
        if (!unit.Regions[region].Any(step => step.Actions.OfType<DriveAction>().Any()))
        {
            return;
        }

        body.Open($"CASE {UnitText.Branch(region)}_Now OF");
        foreach (Step step in unit.Regions[region])
        {
            DriveAction[] drives = [.. step.Actions.OfType<DriveAction>()];
            if (drives.Length == 0)
            {
                continue;
            }

            body.Open($"{unit.StepLabel(step)}:");
            foreach (DriveAction drive in drives)
            {
                string demand = unit.Names.Of($"{drive.Output.Tag}.{(drive.On ? "on" : "off")}");
                string line = $"{demand} := TRUE;";
                body.Add(extras.TryGetValue(drive, out string? condition) ? $"IF {condition} THEN {line} END_IF;" : line);
            }

            body.Leave();
        }

        body.Close("END_CASE;");
    }

    /// <summary>
    /// What an action waits for beside its step. Conditions are worked out in every scan, never inside an
    /// IF, so that their clocks do not stand still.
    /// </summary>
    private static Dictionary<DriveAction, string> Extras(UnitText unit)
    {
        Dictionary<DriveAction, string> extras = new(ReferenceEqualityComparer.Instance);
        foreach (Step step in unit.Unit.Steps)
        {
            if (LongestAction(unit, step) > 0)
            {
                string elapsed = Elapsed(unit, step);
                unit.Body.Add($"IF {unit.Entered(step.Number)} THEN {elapsed} := 0; END_IF;");
            }

            foreach ((DriveAction drive, string path) in Paths(step))
            {
                if (Extra(unit, step, drive, path) is { } condition)
                {
                    extras.Add(drive, condition);
                }
            }
        }

        return extras;
    }

    /// <summary>The drives of the step, each with the path of what it keeps.</summary>
    public static IEnumerable<(DriveAction Drive, string Path)> Paths(Step step)
    {
        Dictionary<string, int> numbers = new(StringComparer.Ordinal);
        foreach (DriveAction drive in step.Actions.OfType<DriveAction>())
        {
            int number = numbers[drive.Output.Tag] = numbers.GetValueOrDefault(drive.Output.Tag) + 1;
            yield return (drive, FormattableString.Invariant($"step{step.Number}.{drive.Output.Tag}{(number == 1 ? "" : "_" + number)}"));
        }
    }

    private static string? Extra(UnitText unit, Step step, DriveAction drive, string path)
    {
        List<string> conditions = step.OnlyIf is null ? [] : [$"(NOT {StepText.PassedOver(unit, step)})"];
        if (!step.Claims.IsEmpty && !drive.AtOnce)
        {
            conditions.Add(ClaimText.Owns(unit, step));
        }

        long after = unit.Scans(drive.After);
        if (after > 0)
        {
            conditions.Add(FormattableString.Invariant($"({Elapsed(unit, step)} >= {after})"));
        }

        if (drive is { OnceABatch: true, For: { } share })
        {
            conditions.Add(FormattableString.Invariant($"(NOT {unit.Names.Of("started")}) AND ({ShareText.Given(unit, drive, path)} < {unit.Scans(share)})"));
        }

        if (drive.AtEach is { } edge)
        {
            conditions.Add(ShareText.SinceEdge(unit, step, drive, edge, path));
        }

        if (drive is { For: { } length, OnceABatch: false, AtEach: null })
        {
            conditions.Add(FormattableString.Invariant($"({Elapsed(unit, step)} < {after + unit.Scans(length)})"));
        }

        if (drive.While is not null)
        {
            string surely = unit.Conditions.Surely(drive.While, new ConditionSite($"{path}.while", step: step));
            string holds = unit.Scratch($"{path}.holds");
            unit.Body.Add($"{holds} := {surely};");
            conditions.Add(holds);
        }

        if (drive.Until is not null)
        {
            string possibly = unit.Conditions.Possibly(drive.Until, new ConditionSite($"{path}.until", step: step));
            string done = unit.Flag(VariableSection.Retained, $"{path}.done", $"{drive.Output.Tag} has reached its end in this activation");
            unit.Body.Trace(drive.Span, $"step {step.Number}: {drive.Output.Tag} until its end");
            unit.Body.Add($"IF {unit.Entered(step.Number)} THEN {done} := FALSE; END_IF;");
            unit.Body.Add($"IF {unit.StepNow(step.Number)} AND {(drive.AtOnce ? UnitText.InState(step) : unit.Works(step))} AND {possibly} THEN {done} := TRUE; END_IF;");
            conditions.Add($"(NOT {done})");
        }

        return conditions.Count == 0 ? null : UnitText.Bracketed(conditions, "AND", "TRUE");
    }
}
