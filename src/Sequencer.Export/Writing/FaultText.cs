using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 3: devices that do not obey, broken assumptions, trips, first-out, and what all faults ask for.</summary>
internal static class FaultText
{
    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("3  Faults: memory, devices, assumptions, trips, doses, limits");
        MemoryText.Judge(unit);
        foreach (Output output in unit.Unit.Outputs.Where(output => output.Confirmation is not null))
        {
            Discrepancy(unit, output);
        }

        foreach (AssumptionClause assumption in unit.Unit.Assumptions.Where(assumption => assumption.Monitored))
        {
            AssumptionText.Write(unit, assumption);
        }

        foreach (Trip trip in unit.Unit.Trips)
        {
            WriteTrip(unit, trip);
        }

        FirstOut(unit, null);
        foreach (ProtectionGroup group in unit.Unit.Groups)
        {
            FirstOut(unit, group.Name);
        }

        foreach (Step step in unit.Unit.Steps)
        {
            foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
            {
                DoseText.Measure(unit, step, dose);
            }

            foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>())
            {
                AmountDoseText.Judge(unit, step, dose);
            }

            foreach (PromptAction prompt in step.Actions.OfType<PromptAction>())
            {
                PromptText.Judge(unit, prompt);
            }
        }

        TransitionText.JudgeCounted(unit);
        ClaimText.Faults(unit);
        Requests(unit);
    }

    public static string Latched(UnitText unit, Output output) => unit.Flag(
        VariableSection.Retained, $"{output.Tag}.discrepancy", $"{output.Tag} does not obey; until reset");

    public static string Latched(UnitText unit, Trip trip) =>
        unit.Flag(VariableSection.Retained, $"{trip.Name}.latched", $"{trip.Title}; until reset");

    /// <summary>Everything that asks for the reaction in this scan.</summary>
    public static string Asks(Reaction reaction) => reaction switch
    {
        Reaction.Emergency => "Asks_Emergency",
        Reaction.Abort => "Asks_Abort",
        Reaction.Stop => "Asks_Stop",
        Reaction.Hold => "Asks_Hold",
        _ => throw new System.Diagnostics.UnreachableException($"{reaction} asks the state machine for nothing"),
    };

    private static void Discrepancy(UnitText unit, Output output)
    {
        TextLines body = unit.Body;
        Confirmation confirmation = output.Confirmation ?? throw new InvalidOperationException($"{output.Tag} has no confirmation");
        string last = unit.Names.Of($"{output.Tag}.last");
        string disagrees = unit.Scratch($"{output.Tag}.disagrees");
        string latched = Latched(unit, output);
        body.Trace(confirmation.Span, $"{output.Tag} {output.Description} must obey within {DurationText.Of(confirmation.Within)}");
        body.Add($"{disagrees} := {ConditionText.Not(SignalText.Confirms(unit, output, last))};");
        string late = disagrees;
        if (unit.Scans(confirmation.Within) > 0)
        {
            string timer = unit.Declare(VariableSection.Kept, $"{output.Tag}.stroke", "TON", null, $"{output.Tag} disagrees with its command");
            body.Add($"{timer}(IN := {disagrees}, PT := {DurationText.Of(confirmation.Within)});");
            late = $"{timer}.Q";
        }

        SetOrReset(unit, latched, late, disagrees, null);
    }

    private static void WriteTrip(UnitText unit, Trip trip)
    {
        TextLines body = unit.Body;
        ConditionSite site = new(trip.Name);
        body.Clause(trip.Span);
        string surely = unit.Conditions.Surely(trip.Condition, site);
        string possibly = unit.Conditions.Possibly(trip.Condition, site);
        if (OverrideText.Active(unit, trip.Name) is { } overridden)
        {
            surely = $"({surely} AND (NOT {overridden}))";
            possibly = $"({possibly} AND (NOT {overridden}))";
        }

        string cause = unit.Scratch($"{trip.Name}.cause");
        body.Add($"{cause} := {possibly};");
        SetOrReset(unit, Latched(unit, trip), trip.IfBad == BadSignal.Trip ? cause : surely, cause, trip.Group);
        if (trip.IfBad != BadSignal.Trip && ConditionText.CanBeUnknown(trip.Condition))
        {
            string unknown = unit.Scratch($"{trip.Name}.unknown");
            body.Add($"{unknown} := {cause} AND {ConditionText.Not(surely)};");
            if (trip.IfBad == BadSignal.Hold)
            {
                string bad = unit.Flag(VariableSection.Retained, $"{trip.Name}.bad.latched", $"{trip.Title}: signal not usable; until reset");
                SetOrReset(unit, bad, unknown, cause, trip.Group);
            }
        }
    }

    /// <summary>Latches with the cause, lets go at a reset without it.</summary>
    public static void SetOrReset(UnitText unit, string latch, string set, string cause, string? group)
    {
        unit.Body.Open($"IF {set} THEN");
        unit.Body.Add($"{latch} := TRUE;");
        unit.Body.Else($"ELSIF {StateMachineText.ResetOf(unit, group)} AND (NOT {cause}) THEN");
        unit.Body.Add($"{latch} := FALSE;");
        unit.Body.Close("END_IF;");
    }

    private static void FirstOut(UnitText unit, string? group)
    {
        Trip[] members = [.. unit.Unit.Trips.Where(trip => trip.Group == group)];
        if (members.Length == 0)
        {
            return;
        }

        TextLines body = unit.Body;
        string[] trips = [.. members.Select(trip => Latched(unit, trip))];
        string first = unit.Counter(
            VariableSection.Retained,
            group is null ? "first_out" : $"{group}.first_out",
            trips.Length,
            "the trip that came first: " + string.Join(", ", members.Select((trip, index) => FormattableString.Invariant($"{index + 1} = {trip.Name}"))));
        body.Comment($"The first trip of a quiet {(group is null ? "unit" : "group")} is remembered until none is latched.");
        body.Open($"IF ({first} = 0) OR (NOT {UnitText.Bracketed(trips, "OR", "FALSE")}) THEN");
        for (int index = 0; index < trips.Length; index++)
        {
            string line = FormattableString.Invariant($"{(index == 0 ? "IF" : "ELSIF")} {trips[index]} THEN {first} := {index + 1};");
            body.Add(line);
        }

        body.Add($"ELSE {first} := 0;");
        body.Add("END_IF;");
        body.Close("END_IF;");
    }

    private static void Requests(UnitText unit)
    {
        unit.Body.Comment("What the faults ask the unit to do.");
        foreach (Permissive permissive in unit.Unit.Permissives.Where(permissive => permissive.Patience is not null))
        {
            foreach (Output output in permissive.Outputs)
            {
                string clock = ProtectionText.Refusals(unit, permissive, output);
                string impatient = unit.Scratch($"{permissive.Name}.{output.Tag}.impatient");
                unit.Body.Add(FormattableString.Invariant($"{impatient} := {clock} >= {unit.Scans(permissive.Patience.GetValueOrDefault())};"));
            }
        }

        foreach (Step step in unit.Unit.Steps)
        {
            string over = unit.Scratch(FormattableString.Invariant($"step{step.Number}.limit_over"));
            unit.Body.Clause(step.Limit.Span, FormattableString.Invariant($"step {step.Number}"));
            unit.Body.Add($"{over} := {unit.StepAtStart(step.Number)} AND (State_At_Start = {StateText.Value(step.State)}) AND {StepClockText.LimitReached(unit, step)};");
        }

        foreach (Reaction reaction in new[] { Reaction.Emergency, Reaction.Abort, Reaction.Stop, Reaction.Hold })
        {
            string asks = unit.Scratch(Asks(reaction));
            unit.Body.Add($"{asks} := {UnitText.Bracketed(Sources(unit, reaction), "OR", "FALSE")};");
        }
    }

    private static IEnumerable<string> Sources(UnitText unit, Reaction reaction)
    {
        UnitProgram program = unit.Unit;
        IEnumerable<string> trips = program.Trips.Where(trip => trip.Reaction == reaction).Select(trip => Latched(unit, trip));
        IEnumerable<string> bad = program.Trips
            .Where(trip => reaction == Reaction.Hold && trip.IfBad == BadSignal.Hold && ConditionText.CanBeUnknown(trip.Condition))
            .Select(trip => unit.Names.Of($"{trip.Name}.bad.latched"));
        IEnumerable<string> devices = program.Outputs
            .Where(output => output.Confirmation?.Reaction == reaction).Select(output => Latched(unit, output));
        IEnumerable<string> limits = program.Steps
            .Where(step => step.Limit.GoTo is null && step.Limit.Reaction == reaction)
            .Select(step => unit.Names.Of(FormattableString.Invariant($"step{step.Number}.limit_over")));
        IEnumerable<string> doses = program.Steps.SelectMany(step => step.Actions.OfType<DoseAction>()
            .SelectMany(dose => DoseText.Asks(unit, step, dose, reaction)));
        IEnumerable<string> amounts = program.Steps.SelectMany(step => step.Actions.OfType<AmountDoseAction>()
            .SelectMany(dose => AmountDoseText.Asks(unit, step, dose, reaction)));
        IEnumerable<string> prompts = program.Steps.SelectMany(step => step.Actions.OfType<PromptAction>())
            .Where(prompt => prompt.Reaction == reaction).Select(prompt => PromptText.Late(unit, prompt));
        IEnumerable<string> turns = TransitionOrder.Of(program).Where(transition => transition.AtMost?.Reaction == reaction)
            .Select(transition => TransitionText.Over(unit, transition));
        IEnumerable<string> permissives = program.Permissives
            .Where(permissive => permissive.Patience is not null && permissive.Reaction == reaction)
            .SelectMany(permissive => permissive.Outputs.Select(output => unit.Names.Of($"{permissive.Name}.{output.Tag}.impatient")));
        IEnumerable<string> assumptions = program.Assumptions
            .Where(assumption => assumption.Monitored && assumption.Reaction == reaction)
            .Select(assumption => unit.Names.Of($"{assumption.Name}.breached"));
        IEnumerable<string> held = unit.Unit.HeldLimit is { } limit && limit.Reaction == reaction ? [StateMachineText.HeldTooLong(unit, limit)] : [];
        IEnumerable<string> memory = reaction == Reaction.Emergency ? [MemoryText.Latched(unit)] : [];
        return [.. memory, .. held, .. ClaimText.Asks(unit, reaction), .. trips, .. bad, .. devices, .. limits, .. doses, .. amounts, .. prompts, .. turns, .. permissives, .. assumptions];
    }
}
