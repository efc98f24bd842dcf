using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Alarms as outputs of the block, each with its message.</summary>
internal static class AlarmText
{
    public static void Write(UnitText unit)
    {
        unit.Body.Section("8  Alarms, judged before totals and memories move on");
        UnitProgram program = unit.Unit;
        MemoryText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        foreach (Trip trip in program.Trips)
        {
            Raise(unit, trip.Name, trip.Title, FaultText.Latched(unit, trip));
            if (trip.IfBad != BadSignal.Trip && ConditionText.CanBeUnknown(trip.Condition))
            {
                string told = trip.IfBad == BadSignal.Hold ? $"{trip.Name}.bad.latched" : $"{trip.Name}.unknown";
                Raise(unit, $"{trip.Name}.bad", $"{trip.Title}: signal not usable", unit.Names.Of(told));
            }
        }

        foreach (Output output in program.Outputs.Where(output => output.Confirmation is not null))
        {
            Raise(unit, $"{output.Tag}.discrepancy", $"{output.Tag} {output.Description}: does not obey", FaultText.Latched(unit, output));
        }

        foreach (AssumptionClause assumption in program.Assumptions.Where(assumption => assumption.Monitored))
        {
            Raise(unit, assumption.Name, $"Assumption not kept: {assumption.Title}", unit.Names.Of($"{assumption.Name}.breached"));
        }

        foreach (Permissive permissive in program.Permissives.Where(permissive => permissive.Patience is not null))
        {
            foreach (Output output in permissive.Outputs)
            {
                Raise(unit, $"{permissive.Name}.{output.Tag}.refused", $"{output.Tag} may not start: {permissive.Title}", unit.Names.Of($"{permissive.Name}.{output.Tag}.impatient"));
            }
        }

        Starts(unit);
        foreach (Step step in program.Steps)
        {
            OfStep(unit, step);
        }

        foreach (OrderedTransition transition in TransitionOrder.Of(program))
        {
            if (transition.AtMost is { } most)
            {
                Raise(unit, $"{transition.Name}.over", most.Message, TransitionText.Over(unit, transition));
            }
        }

        CalibrationText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        if (unit.Unit.HeldLimit is { } held)
        {
            Raise(unit, "held.limit", held.Message, StateMachineText.HeldTooLong(unit, held));
        }

        ClaimText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        PairText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        VoteText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        OverrideText.Alarms(unit, (path, message, raised) => Raise(unit, path, message, raised));
        foreach (OperatorAlarm alarm in program.Alarms)
        {
            unit.Body.Clause(alarm.Span);
            Raise(unit, alarm.Name, alarm.InWords(), unit.Conditions.Possibly(alarm.Condition, new ConditionSite(alarm.Name)));
            if (alarm.Response is not null)
            {
                State(unit, alarm);
            }
        }
    }

    /// <summary>The values of <see cref="AlarmState"/> in their order.</summary>
    private static void State(UnitText unit, OperatorAlarm alarm)
    {
        TextLines body = unit.Body;
        string state = unit.Counter(
            VariableSection.Retained, $"{alarm.Name}.state", (long)AlarmState.ReturnedUnacknowledged, "0 normal, 1 unacknowledged, 2 acknowledged, 3 returned, unacknowledged (IEC 62682)");
        string acknowledged = unit.Names.Of("acknowledge.edge");
        body.Open($"IF {unit.Names.Of($"alarm.{alarm.Name}")} THEN");
        body.Add($"IF ({state} = 2) OR (({state} = 1) AND {acknowledged}) THEN {state} := 2; ELSE {state} := 1; END_IF;");
        body.Else($"ELSIF (({state} = 1) OR ({state} = 3)) AND (NOT {acknowledged}) THEN");
        body.Add($"{state} := 3;");
        body.Else("ELSE");
        body.Add($"{state} := 0;");
        body.Close("END_IF;");
    }

    private static void Starts(UnitText unit)
    {
        string asked = StartText.Asked(unit);
        if (!unit.Unit.Parameters.IsEmpty)
        {
            Raise(unit, "start.setting", "Start refused: a setting is out of its range", $"{asked} AND (NOT {unit.Names.Of("settings_in_range")})");
        }

        Raise(unit, "start.fault", "Start refused: reset the trips first", $"{asked} AND (NOT {unit.Names.Of("healthy")})");
        if (CalibrationText.Any(unit) is { } calibrated)
        {
            Raise(unit, "start.calibration", "Start refused: a reading is being calibrated", $"{asked} AND {calibrated}");
        }

        for (int index = 0; index < unit.Unit.StartConditions.Length; index++)
        {
            string path = FormattableString.Invariant($"start{index + 1}");
            Raise(unit, path, unit.Unit.StartConditions[index].Message, $"{asked} AND (NOT {unit.Names.Of($"{path}.holds")})");
        }
    }

    private static void OfStep(UnitText unit, Step step)
    {
        string over = FormattableString.Invariant($"step{step.Number}.limit_over");
        Raise(unit, FormattableString.Invariant($"step{step.Number}.limit"), step.Limit.Message, unit.Names.Of(over));
        foreach (DoseAction dose in step.Actions.OfType<DoseAction>())
        {
            Raise(unit, DoseText.Path(step, dose, "unusable"), $"{dose.Signal.Tag} not usable: {dose.Output.Tag} does not dose", unit.Names.Of(DoseText.Path(step, dose, "unusable")));
            Raise(unit, DoseText.Path(step, dose, "no_response"), $"{dose.Signal.Tag} does not answer to {dose.Output.Tag}", unit.Names.Of(DoseText.Path(step, dose, "no_response")));
            Raise(unit, DoseText.Path(step, dose, "exhausted"), $"{dose.Output.Tag} has given all that a batch may have", unit.Names.Of(DoseText.Path(step, dose, "exhausted")));
        }

        foreach (PromptAction prompt in step.Actions.OfType<PromptAction>())
        {
            Raise(unit, $"{prompt.Name}.late", prompt.Message, PromptText.Late(unit, prompt));
        }

        foreach (AmountDoseAction dose in step.Actions.OfType<AmountDoseAction>().Where(dose => dose.Of is not null))
        {
            if (dose.Of is ReadingQuantity reading)
            {
                string unusable = AmountDoseText.Path(step, dose, "unusable");
                Raise(unit, unusable, $"{reading.Input.Tag} not usable: {dose.Output.Tag} does not dose", unit.Names.Of(unusable));
            }

            string exhausted = AmountDoseText.Path(step, dose, "exhausted");
            Raise(unit, exhausted, $"{dose.Output.Tag} has given all that a batch may have", unit.Names.Of(exhausted));
        }
    }

    private static void Raise(UnitText unit, string path, string message, string raised)
    {
        string alarm = unit.Declare(VariableSection.Output, $"alarm.{path}", "BOOL", null, message);
        unit.Body.Add($"{alarm} := {raised};");
    }
}
