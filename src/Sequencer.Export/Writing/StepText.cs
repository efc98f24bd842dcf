using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 5: the steps move by the rules of IEC 60848, on the situation at the start of the scan.</summary>
internal static class StepText
{
    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("5  Steps: transitions are judged on the situation at the start of the scan");
        IReadOnlyList<OrderedTransition> transitions = TransitionOrder.Of(unit.Unit);
        foreach (OrderedTransition transition in transitions)
        {
            if (TransitionText.IsJudgedEarly(transition, transitions))
            {
                continue;
            }

            body.Clause(transition.Span, $"from {string.Join(", ", transition.From)}");
            body.Add($"{unit.Met(transition)} := {TransitionText.Condition(unit, transition)};");
        }

        foreach (OrderedTransition transition in transitions.Where(transition => transition.AtMost is not null))
        {
            body.Add($"{TransitionText.Taken(unit, transition)} := FALSE;");
        }

        for (int region = 0; region < unit.Regions.Count; region++)
        {
            string branch = Kept(unit, region);
            body.Add($"{unit.Scratch($"{branch}.now", unit.StepType)} := {branch};");
        }

        foreach (Step step in unit.Unit.Steps)
        {
            body.Add($"{unit.Entered(step.Number)} := FALSE;");
        }

        foreach (int step in transitions.SelectMany(transition => transition.From).Distinct().Where(step => StepMoveText.IsContested(step, null, transitions)))
        {
            body.Add($"{StepMoveText.Left(unit, step)} := FALSE;");
        }

        Work(unit, ProceduralState.Running, transitions);
        body.Else($"ELSIF {unit.Names.Of("started")} THEN");
        StepMoveText.Clear(unit, ProceduralState.Running);
        StepMoveText.Enter(unit, unit.Unit.FirstStep(ProceduralState.Running).Number);
        GoBack(unit);
        body.Else($"ELSIF (State_Now = {StateText.Value(ProceduralState.Stopping)}) OR (State_Now = {StateText.Value(ProceduralState.Aborting)}) THEN");
        StepMoveText.Clear(unit, ProceduralState.Running);
        body.Close("END_IF;");
        foreach (ProceduralState state in unit.Unit.StatesWithSteps.Where(state => state != ProceduralState.Running))
        {
            body.Comment($"The steps of {Sections.Word(state)} begin and end with their state.");
            Work(unit, state, transitions);
            body.Else($"ELSIF State_Now = {StateText.Value(state)} THEN");
            StepMoveText.Clear(unit, state);
            StepMoveText.Enter(unit, unit.Unit.FirstStep(state).Number);
            body.Else("ELSE");
            StepMoveText.Clear(unit, state);
            body.Close("END_IF;");
        }

        foreach (Step step in unit.Unit.Steps.Where(step => step.OnlyIf is not null))
        {
            Judge(unit, step);
        }
    }

    /// <summary>The active step of a branch, as it is kept from scan to scan.</summary>
    public static string Kept(UnitText unit, int region)
    {
        ProceduralState state = unit.StateOf(region);
        string comment = state == ProceduralState.Running ? "the active step" : $"the active step while {Sections.Word(state)}";
        return unit.Declare(UnitText.Memory(unit.Regions[region][0]), UnitText.Branch(region), unit.StepType, unit.Dialect.Literal(unit.NoStep, 0), comment);
    }

    /// <summary>The step is passed over: it does nothing and leads on in the next scan.</summary>
    public static string PassedOver(UnitText unit, Step step) =>
        unit.Flag(UnitText.Memory(step), FormattableString.Invariant($"step{step.Number}.passed_over"), $"step {step.Number} is passed over");

    /// <summary>A restart in some steps goes on at others.</summary>
    private static void GoBack(UnitText unit)
    {
        Step[] steps = [.. unit.Unit.Steps.Where(step => step.RestartAt is not null)];
        if (steps.Length == 0)
        {
            return;
        }

        unit.Body.Else($"ELSIF {unit.Names.Of("restarted")} THEN");
        foreach (Step step in steps)
        {
            RestartPoint point = step.RestartAt ?? throw new InvalidOperationException("filtered above");
            unit.Body.Trace(point.Span, FormattableString.Invariant($"a restart in step {step.Number} goes on at step {point.Step}"));
            unit.Body.Open($"IF {unit.StepAtStart(step.Number)} THEN");
            if (unit.Place(step.Number).Branch != unit.Place(point.Step).Branch)
            {
                StepMoveText.Leave(unit, step.Number);
            }

            StepMoveText.Enter(unit, point.Step);
            unit.Body.Close("END_IF;");
        }
    }

    /// <summary>The clocks at the end of the scan.</summary>
    public static void Finish(UnitText unit)
    {
        foreach (Step step in unit.Unit.Steps)
        {
            StepClockText.Write(unit, step);
        }

        TransitionText.CountWays(unit);
        StepClockText.Stays(unit);
        unit.Body.Comment("The situation that the next scan starts from.");
        for (int region = 0; region < unit.Regions.Count; region++)
        {
            unit.Body.Add($"{UnitText.Branch(region)} := {UnitText.Branch(region)}_Now;");
        }
    }

    /// <summary>Opens the part of a state that was there before and goes on: its steps move.</summary>
    private static void Work(UnitText unit, ProceduralState state, IReadOnlyList<OrderedTransition> all)
    {
        OrderedTransition[] transitions = [.. all.Where(transition => unit.StepOf(transition.From[0]).State == state)];
        unit.Body.Open($"IF (State_At_Start = {StateText.Value(state)}) AND (State_Now = {StateText.Value(state)}) THEN");
        foreach (int region in unit.RegionsOf(state))
        {
            StepMoveText.Moves(unit, UnitText.Branch(region), unit.Regions[region], transitions);
        }

        StepMoveText.Joins(unit, transitions);
    }

    private static void Judge(UnitText unit, Step step)
    {
        Condition condition = step.OnlyIf ?? throw new InvalidOperationException($"step {step.Number} is always done");
        unit.Body.Clause(step.Span);
        string path = FormattableString.Invariant($"step{step.Number}.only");
        string surely = unit.Conditions.Surely(condition, new ConditionSite(path));
        string fits = unit.Scratch($"{path}.holds");
        unit.Body.Add($"{fits} := {surely};");
        unit.Body.Add($"IF {unit.Entered(step.Number)} THEN {PassedOver(unit, step)} := (NOT {fits}); END_IF;");
    }
}
