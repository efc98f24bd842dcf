using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 5: the steps move by the rules of IEC 60848, on the situation at the start of the scan.</summary>
internal static class StepText
{
    public static string LimitReached(UnitText unit, Step step) =>
        FormattableString.Invariant($"({LimitClock(unit, step)} >= {unit.Scans(step.Limit.Time)})");

    public static string LimitClock(UnitText unit, Step step) => unit.Counter(
        UnitText.Memory(step),
        FormattableString.Invariant($"step{step.Number}.clock"),
        unit.Scans(step.Limit.Time),
        FormattableString.Invariant($"scans in step {step.Number}, to its limit of {DurationText.Of(step.Limit.Time)}"));

    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("5  Steps: transitions are judged on the situation at the start of the scan");
        IReadOnlyList<OrderedTransition> transitions = TransitionOrder.Of(unit.Unit);
        foreach (OrderedTransition transition in transitions)
        {
            if (IsJudgedEarly(transition, transitions))
            {
                continue;
            }

            body.Clause(transition.Span, $"from {string.Join(", ", transition.From)}");
            body.Add($"{unit.Met(transition)} := {Condition(unit, transition)};");
        }

        foreach (OrderedTransition transition in transitions.Where(transition => transition.AtMost is not null))
        {
            body.Add($"{Taken(unit, transition)} := FALSE;");
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

        foreach (int step in transitions.SelectMany(transition => transition.From).Distinct().Where(step => IsContested(step, null, transitions)))
        {
            body.Add($"{Left(unit, step)} := FALSE;");
        }

        Work(unit, ProceduralState.Running, transitions);
        body.Else($"ELSIF {unit.Names.Of("started")} THEN");
        Clear(unit, ProceduralState.Running);
        Enter(unit, unit.Unit.FirstStep(ProceduralState.Running).Number);
        GoBack(unit);
        body.Else($"ELSIF (State_Now = {StateText.Value(ProceduralState.Stopping)}) OR (State_Now = {StateText.Value(ProceduralState.Aborting)}) THEN");
        Clear(unit, ProceduralState.Running);
        body.Close("END_IF;");
        foreach (ProceduralState state in unit.Unit.StatesWithSteps.Where(state => state != ProceduralState.Running))
        {
            body.Comment($"The steps of {Sections.Word(state)} begin and end with their state.");
            Work(unit, state, transitions);
            body.Else($"ELSIF State_Now = {StateText.Value(state)} THEN");
            Clear(unit, state);
            Enter(unit, unit.Unit.FirstStep(state).Number);
            body.Else("ELSE");
            Clear(unit, state);
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

    /// <summary>Ways with a count, and those above them: whether they are wanted is known before the state is, since one turn too many asks for a reaction.</summary>
    public static void JudgeCounted(UnitText unit)
    {
        TextLines body = unit.Body;
        IReadOnlyList<OrderedTransition> transitions = TransitionOrder.Of(unit.Unit);
        foreach (OrderedTransition transition in transitions.Where(transition => IsJudgedEarly(transition, transitions)))
        {
            string met = unit.Met(transition);
            body.Clause(transition.Span, $"from {string.Join(", ", transition.From)}");
            body.Add($"{met} := {Condition(unit, transition)};");
            if (transition.AtMost is not { } most)
            {
                continue;
            }

            IEnumerable<string> above = transitions.TakeWhile(earlier => earlier != transition)
                .Where(earlier => earlier.From.Any(step => transition.From.Contains(step)))
                .Select(earlier => UnitText.Bracketed([.. earlier.From.Select(unit.StepAtStart), unit.Met(earlier)], "AND", "TRUE"));
            string wanted = UnitText.Bracketed([.. transition.From.Select(unit.StepAtStart), $"(State_At_Start = {StateText.Value(ProceduralState.Running)})", met], "AND", "TRUE");
            string count = Count(unit, transition, most);
            string[] before = [.. above];
            string others = before.Length == 0 ? "" : $" AND (NOT {UnitText.Bracketed(before, "OR", "FALSE")})";
            body.Add(FormattableString.Invariant($"{Over(unit, transition)} := {wanted} AND ({count} >= {most.Most}){others};"));
            body.Add(FormattableString.Invariant($"{met} := {met} AND ({count} < {most.Most});"));
        }
    }

    public static string Over(UnitText unit, OrderedTransition transition) => unit.Scratch($"{transition.Name}.over");

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
                Leave(unit, step.Number);
            }

            Enter(unit, point.Step);
            unit.Body.Close("END_IF;");
        }
    }

    private static string Taken(UnitText unit, OrderedTransition transition) => unit.Scratch($"{transition.Name}.taken");

    private static string Count(UnitText unit, OrderedTransition transition, WayCount most) =>
        unit.Counter(VariableSection.Retained, $"{transition.Name}.count", most.Most, "times that this way was taken in this batch");

    private static string Condition(UnitText unit, OrderedTransition transition)
    {
        Step owner = unit.StepOf(transition.From[^1]);
        if (transition.When is not { } when)
        {
            return ClaimText.LeadsOn(unit, transition, LimitReached(unit, owner));
        }

        string passed = owner.OnlyIf is null ? "" : $"{PassedOver(unit, owner)} OR ";
        string condition = passed + unit.Conditions.Surely(when, new ConditionSite(transition.Name, step: owner));
        string advances = owner.IsOfBatch ? StateMachineText.AndAdvances(unit) : "";
        return ClaimText.LeadsOn(unit, transition, advances.Length == 0 ? condition : $"({condition}){advances}");
    }

    private static bool IsJudgedEarly(OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions) => transition.AtMost is not null
        || transitions.SkipWhile(earlier => earlier != transition).Any(later => later.AtMost is not null && later.From.Any(step => transition.From.Contains(step)));

    /// <summary>The clocks at the end of the scan.</summary>
    public static void Finish(UnitText unit)
    {
        foreach (Step step in unit.Unit.Steps)
        {
            Clock(unit, step);
        }

        foreach (OrderedTransition transition in TransitionOrder.Of(unit.Unit))
        {
            if (transition.AtMost is { } most)
            {
                string count = Count(unit, transition, most);
                string atStart = UnitText.Bracketed(transition.From.Select(unit.StepAtStart), "AND", "TRUE");
                unit.Body.Trace(most.Span, FormattableString.Invariant($"at most {most.Most} times; a restart after the last grants one more"));
                unit.Body.Open($"IF {unit.Names.Of("started")} THEN");
                unit.Body.Add($"{count} := 0;");
                unit.Body.Else($"ELSIF {Taken(unit, transition)} THEN");
                unit.Body.Add(UnitText.CountUp(count, most.Most));
                unit.Body.Else(FormattableString.Invariant($"ELSIF {unit.Names.Of("restarted")} AND {atStart} AND ({count} >= {most.Most}) THEN"));
                unit.Body.Add(FormattableString.Invariant($"{count} := {most.Most - 1};"));
                unit.Body.Close("END_IF;");
            }
        }

        unit.Body.Comment("Conditions of steps that must last: they start anew with their step and outside the state it works in.");
        foreach ((StayClock clock, string condition) in unit.Conditions.StepClocks)
        {
            unit.Body.Open($"IF NOT ({condition} AND {unit.StepNow(clock.Step.Number)} AND {unit.Works(clock.Step)}) THEN");
            unit.Body.Add($"{clock.Name} := 0;");
            unit.Body.Else($"ELSIF {unit.Entered(clock.Step.Number)} THEN");
            unit.Body.Add($"{clock.Name} := 1;");
            unit.Body.Else("ELSE");
            unit.Body.Add(UnitText.CountUp(clock.Name, clock.Limit));
            unit.Body.Close("END_IF;");
        }

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
            Moves(unit, UnitText.Branch(region), unit.Regions[region], transitions);
        }

        Joins(unit, transitions);
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

    private static void Moves(UnitText unit, string branch, IReadOnlyList<Step> steps, IReadOnlyList<OrderedTransition> transitions)
    {
        TextLines body = unit.Body;
        (Step Step, OrderedTransition[] Own)[] moves =
        [
            .. steps.Select(step => (step, transitions
                .Where(transition => transition.From is [int from] && from == step.Number && !AfterJoin(transition, transitions)).ToArray()))
                .Where(move => move.Item2.Length > 0),
        ];
        if (moves.Length == 0)
        {
            return;
        }

        body.Open($"CASE {branch} OF");
        foreach ((Step step, OrderedTransition[] own) in moves)
        {
            body.Open($"{unit.StepLabel(step)}:");
            for (int index = 0; index < own.Length; index++)
            {
                string line = $"IF {unit.Met(own[index])} THEN";
                if (index == 0)
                {
                    body.Open(line);
                }
                else
                {
                    body.Else("ELS" + line);
                }

                Take(unit, own[index], transitions);
            }

            body.Close("END_IF;");
            body.Leave();
        }

        body.Close("END_CASE;");
    }

    /// <summary>Joins, and the ways out of limits of steps that wait in one, lose against what was taken before.</summary>
    private static void Joins(UnitText unit, IReadOnlyList<OrderedTransition> transitions)
    {
        foreach (OrderedTransition transition in transitions.Where(transition => transition.From.Length > 1 || AfterJoin(transition, transitions)))
        {
            IEnumerable<string> ready = transition.From.Select(step => Ready(unit, step, transition, transitions));
            unit.Body.Trace(transition.Span, $"from {string.Join(", ", transition.From)} together");
            unit.Body.Open($"IF {string.Join(" AND ", ready)} AND {unit.Met(transition)} THEN");
            Take(unit, transition, transitions);
            unit.Body.Close("END_IF;");
        }
    }

    /// <summary>The step was active and no transition taken before has left it.</summary>
    private static string Ready(UnitText unit, int step, OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions)
    {
        return IsContested(step, transition, transitions)
            ? $"{unit.StepAtStart(step)} AND (NOT {Left(unit, step)})"
            : unit.StepAtStart(step);
    }

    /// <summary>A join, or a way out of a limit behind one, may find that the step was left before it: <paramref name="at"/>, or any where null.</summary>
    private static bool IsContested(int step, OrderedTransition? at, IReadOnlyList<OrderedTransition> transitions) => transitions
        .Where(transition => (at is null || transition == at) && transition.From.Contains(step) && (transition.From.Length > 1 || AfterJoin(transition, transitions)))
        .Any(transition => transitions.TakeWhile(earlier => earlier != transition).Any(earlier => earlier.From.Contains(step)));

    private static string Left(UnitText unit, int step) => unit.Scratch(FormattableString.Invariant($"step{step}.left"), "BOOL");

    private static bool AfterJoin(OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions) =>
        transition.When is null && transitions.Any(join => join.From.Length > 1 && join.From.Contains(transition.From[0]));

    private static void Take(UnitText unit, OrderedTransition transition, IReadOnlyList<OrderedTransition> transitions)
    {
        if (transition.AtMost is not null)
        {
            unit.Body.Add($"{Taken(unit, transition)} := TRUE;");
        }

        HashSet<string> entered = [.. transition.To.Select(step => unit.Place(step).Branch)];
        foreach (int step in transition.From)
        {
            if (!entered.Contains(unit.Place(step).Branch))
            {
                Leave(unit, step);
            }

            if (IsContested(step, null, transitions))
            {
                unit.Body.Add($"{Left(unit, step)} := TRUE;");
            }
        }

        foreach (int step in transition.To)
        {
            Enter(unit, step);
        }
    }

    /// <summary>A step that another transition has entered in this scan stays active (IEC 60848).</summary>
    private static void Leave(UnitText unit, int step)
    {
        string left = $"{unit.Place(step).Branch}_Now := {unit.NoStep};";
        bool canBeEnteredBeside = unit.Regions.All(region => region.Count == 1) && unit.Regions.Count > 1;
        unit.Body.Add(canBeEnteredBeside ? $"IF NOT {unit.Entered(step)} THEN {left} END_IF;" : left);
    }

    private static void Enter(UnitText unit, int step)
    {
        (string branch, string value) = unit.Place(step);
        unit.Body.Add($"{branch}_Now := {value};");
        unit.Body.Add($"{unit.Entered(step)} := TRUE;");
    }

    private static void Clear(UnitText unit, ProceduralState state)
    {
        foreach (int region in unit.RegionsOf(state))
        {
            unit.Body.Add($"{UnitText.Branch(region)}_Now := {unit.NoStep};");
        }
    }

    private static void Clock(UnitText unit, Step step)
    {
        TextLines body = unit.Body;
        string clock = LimitClock(unit, step);
        string entered = unit.Entered(step.Number);
        body.Trace(step.Span, $"clock of step {step.Number} \"{step.Title}\"");
        body.Open($"IF {entered} THEN");
        body.Add($"{clock} := 0;");
        if (step.IsOfBatch)
        {
            string rearmed = unit.Flag(
                VariableSection.Retained, FormattableString.Invariant($"step{step.Number}.rearmed"), "a restart has begun its clock anew once");
            body.Add($"{rearmed} := FALSE;");
            body.Else($"ELSIF {unit.Names.Of("restarted")} AND {unit.StepAtStart(step.Number)} AND {LimitReached(unit, step)} AND (NOT {rearmed}) THEN");
            body.Add($"{clock} := 0;");
            body.Add($"{rearmed} := TRUE;");
        }

        body.Close("END_IF;");
        body.Open($"IF {unit.StepNow(step.Number)} AND {unit.Works(step)} THEN");
        body.Add(UnitText.CountUp(clock, unit.Scans(step.Limit.Time)));
        if (ActionText.LongestAction(unit, step) is long longest and > 0)
        {
            body.Add(UnitText.CountUp(ActionText.Elapsed(unit, step), longest));
        }

        body.Close("END_IF;");
    }
}
