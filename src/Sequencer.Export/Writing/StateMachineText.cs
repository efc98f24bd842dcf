using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Sections 2 and 4: the operator's commands and the procedural state.</summary>
internal static class StateMachineText
{
    private static readonly string[] Words = ["start", "hold", "restart", "stop", "abort", "reset"];

    public static void Commands(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("2  Commands act on their rising edge");
        foreach (string word in AllWords(unit))
        {
            string pressed = unit.Declare(VariableSection.Input, word, "BOOL", null, $"operator: {word}");
            string before = unit.Flag(VariableSection.Kept, $"{word}.before", $"{word} in the scan before", initial: true);
            body.Add($"{unit.Scratch($"{word}.edge")} := {pressed} AND (NOT {before});");
            body.Add($"{before} := {pressed};");
        }

        body.Comment("A unit that was in progress when the power failed is Held: its steps wait for Restart. Outputs whose row gives them a value");
        body.Comment("while Held or at rest, and outputs in manual, have it at once.");
        string state = Kept(unit);
        string atStart = unit.Scratch("State_At_Start", StateText.Type(unit.Dialect));
        body.Add($"{atStart} := {state};");
        body.Open($"IF {unit.Names.Of("first_scan")} THEN");
        body.Open($"CASE {state} OF");
        body.Add($"{unit.StateLabel(ProceduralState.Running, ProceduralState.Holding, ProceduralState.Restarting)}: {Becomes(atStart, ProceduralState.Held)}");
        body.Add($"{unit.StateLabel(ProceduralState.Stopping)}: {Becomes(atStart, ProceduralState.Stopped)}");
        body.Add($"{unit.StateLabel(ProceduralState.Aborting)}: {Becomes(atStart, ProceduralState.Aborted)}");
        body.Close("END_CASE;");
        body.Close("END_IF;");
    }

    /// <summary>The state as it is kept from scan to scan.</summary>
    public static string Kept(UnitText unit) => unit.Declare(
        VariableSection.Retained, "state", StateText.Type(unit.Dialect), StateText.First(unit.Dialect), "procedural state, IEC 61512-1");

    private static IEnumerable<string> AllWords(UnitText unit) =>
    [
        .. Words,
        .. unit.Unit.Alarms.Any(alarm => alarm.Response is not null) ? ["acknowledge"] : Array.Empty<string>(),
        .. unit.Unit.HandAdvance is not null ? ["advance"] : Array.Empty<string>(),
        .. unit.Unit.Groups.Select(group => $"{group.Name}.reset"),
    ];

    /// <summary>The edge of the reset of a group of protections; null is the unit's own.</summary>
    public static string ResetOf(UnitText unit, string? group) => unit.Names.Of(group is null ? "reset.edge" : $"{group}.reset.edge");

    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        foreach (Output output in unit.Unit.Outputs)
        {
            ProtectionText.Manual(unit, output);
        }

        StartText.Wanted(unit);
        body.Section("4  Procedural state: abort beats stop beats hold beats restart beats start");
        body.Comment("Start: from Idle. Hold: Running, Restarting. Restart: Held. Stop: Running, Holding, Held, Restarting. Abort: these, Stopping and");
        body.Comment("Stopped. Reset: Complete, Stopped, Aborted; in every state it lets go what is latched and has no cause any more.");
        List<string> mayStart = [];
        foreach (Parameter parameter in unit.Unit.Parameters)
        {
            string setting = unit.Declare(VariableSection.Input, $"{parameter.Name}.setting", "DINT", null, $"{parameter.Description}; {ParameterRange(parameter)}");
            mayStart.Add(FormattableString.Invariant($"({parameter.Minimum} <= {setting}) AND ({setting} <= {parameter.Maximum})"));
        }

        string inRange = unit.Scratch("settings_in_range");
        body.Add($"{inRange} := {UnitText.Bracketed(mayStart, "AND", "TRUE")};");
        List<string> conditions = [inRange];
        for (int index = 0; index < unit.Unit.StartConditions.Length; index++)
        {
            StartCondition condition = unit.Unit.StartConditions[index];
            string path = FormattableString.Invariant($"start{index + 1}");
            body.Clause(condition.Span);
            string surely = unit.Conditions.Surely(condition.Condition, new ConditionSite(path));
            string holds = unit.Scratch($"{path}.holds");
            body.Add($"{holds} := {surely};");
            conditions.Add(holds);
        }

        if (CalibrationText.Any(unit) is { } calibrated)
        {
            conditions.Add($"(NOT {calibrated})");
        }

        string faultAborts = unit.Scratch("fault_aborts");
        string healthy = unit.Scratch("healthy");
        body.Add($"{faultAborts} := {FaultText.Asks(Reaction.Emergency)} OR {FaultText.Asks(Reaction.Abort)};");
        body.Add($"{healthy} := NOT ({faultAborts} OR {FaultText.Asks(Reaction.Stop)} OR {FaultText.Asks(Reaction.Hold)});");
        Priorities(unit, faultAborts, healthy, UnitText.Bracketed(conditions, "AND", "TRUE"));
    }

    private static void Priorities(UnitText unit, string faultAborts, string healthy, string mayStart)
    {
        TextLines body = unit.Body;
        string now = unit.Scratch("State_Now", StateText.Type(unit.Dialect));
        string started = unit.Scratch("started");
        string restarted = unit.Scratch("restarted");
        string Edge(string word) => unit.Names.Of($"{word}.edge");
        string unopposed = $"(NOT ({Edge("abort")} OR {Edge("stop")} OR {Edge("hold")}))";
        body.Add($"{now} := State_At_Start;");
        body.Add($"{started} := FALSE;");
        body.Add($"{restarted} := FALSE;");
        body.Open($"IF {MemoryText.Differs(unit)} OR (({Edge("abort")} OR {faultAborts}) AND {From(ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting, ProceduralState.Stopping, ProceduralState.Stopped)}) THEN");
        body.Add(Becomes(now, ProceduralState.Aborting));
        body.Else($"ELSIF ({Edge("stop")} OR {FaultText.Asks(Reaction.Stop)}) AND {From(ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting)} THEN");
        body.Add(Becomes(now, ProceduralState.Stopping));
        body.Else($"ELSIF ({Edge("hold")} OR {FaultText.Asks(Reaction.Hold)}) AND {From(ProceduralState.Running, ProceduralState.Restarting)} THEN");
        body.Add(Becomes(now, ProceduralState.Holding));
        body.Else($"ELSIF {Edge("reset")} AND (NOT {faultAborts}) AND {From(ProceduralState.Complete, ProceduralState.Stopped, ProceduralState.Aborted)} THEN");
        body.Add(Becomes(now, ProceduralState.Idle));
        body.Else($"ELSIF {Edge("restart")} AND {unopposed} AND {healthy} AND {From(ProceduralState.Held)} THEN");
        body.Add(Becomes(now, ProceduralState.Restarting));
        body.Add($"{restarted} := TRUE;");
        body.Else($"ELSIF {StartText.Asked(unit)} AND {unopposed} AND {healthy} AND {mayStart} THEN");
        body.Add(Becomes(now, ProceduralState.Running));
        body.Add($"{started} := TRUE;");
        body.Else("ELSE");
        body.Open("CASE State_At_Start OF");
        Ends(unit, now, ProceduralState.Holding, ProceduralState.Held);
        Ends(unit, now, ProceduralState.Restarting, ProceduralState.Running, FormattableString.Invariant($"({RestartClock(unit)} >= {RestartScans(unit)})"));
        Ends(unit, now, ProceduralState.Stopping, ProceduralState.Stopped);
        Ends(unit, now, ProceduralState.Aborting, ProceduralState.Aborted);
        body.Close("END_CASE;");
        body.Close("END_IF;");
    }

    /// <summary>A transient state ends when none of its steps is active any more; at once where it has none.</summary>
    private static void Ends(UnitText unit, string now, ProceduralState transient, ProceduralState then, string? waited = null)
    {
        string[] conditions = [.. new[] { unit.RegionsOf(transient).Any() ? unit.NoneAtStart(transient) : null, waited }.OfType<string>()];
        string line = Becomes(now, then);
        unit.Body.Add(conditions.Length == 0
            ? $"{unit.StateLabel(transient)}: {line}"
            : $"{unit.StateLabel(transient)}: IF {UnitText.Bracketed(conditions, "AND", "TRUE")} THEN {line} END_IF;");
    }

    /// <summary>The state and the clock of the restart, at the end of the scan.</summary>
    public static void Finish(UnitText unit)
    {
        TextLines body = unit.Body;
        string state = unit.Names.Of("state");
        string clock = RestartClock(unit);
        body.Comment("The unit is Complete when no step is active any more.");
        body.Open($"IF (State_Now = {StateText.Value(ProceduralState.Running)}) AND {unit.NoneNow(ProceduralState.Running)} THEN");
        body.Add(Becomes(state, ProceduralState.Complete));
        body.Else("ELSE");
        body.Add($"{state} := State_Now;");
        body.Close("END_IF;");
        if (unit.Unit.HeldLimit is { } held)
        {
            string lasted = HeldClock(unit, held);
            body.Open($"IF State_Now <> {StateText.Value(ProceduralState.Held)} THEN");
            body.Add($"{lasted} := 0;");
            body.Else("ELSE");
            body.Add($"IF State_At_Start <> {StateText.Value(ProceduralState.Held)} THEN {lasted} := 0; END_IF;");
            body.Add(UnitText.CountUp(lasted, Math.Max(1, unit.Scans(held.Time))));
            body.Close("END_IF;");
        }

        body.Open($"IF State_Now <> {StateText.Value(ProceduralState.Restarting)} THEN");
        body.Add($"{clock} := 0;");
        body.Else("ELSE");
        body.Add($"IF {unit.Names.Of("restarted")} THEN {clock} := 0; END_IF;");
        body.Add(UnitText.CountUp(clock, RestartScans(unit)));
        body.Close("END_IF;");
    }

    /// <summary>The unit has been Held for as long as it may be.</summary>
    public static string HeldTooLong(UnitText unit, HeldLimit held) =>
        FormattableString.Invariant($"((State_At_Start = {StateText.Value(ProceduralState.Held)}) AND ({HeldClock(unit, held)} >= {Math.Max(1, unit.Scans(held.Time))}))");

    /// <summary>Steps go on by themselves, or are let go by the button; empty where they always go by themselves.</summary>
    public static string AndAdvances(UnitText unit)
    {
        if (unit.Unit.HandAdvance is not { } advance)
        {
            return "";
        }

        string byHand = unit.Declare(VariableSection.Input, "by_hand", "BOOL", null, $"{advance.Role}: steps wait for the button");
        return $" AND ((NOT {byHand}) OR {unit.Names.Of("advance.edge")})";
    }

    private static string HeldClock(UnitText unit, HeldLimit held) =>
        unit.Counter(VariableSection.Retained, "held_clock", Math.Max(1, unit.Scans(held.Time)), $"scans of Held, to {DurationText.Of(held.Time)}");

    private static string RestartClock(UnitText unit) => unit.Counter(VariableSection.Kept, "restart_clock", RestartScans(unit), "scans of Restarting");

    private static long RestartScans(UnitText unit) => Math.Max(1, unit.Scans(unit.Unit.RestartWait));

    private static string From(params IEnumerable<ProceduralState> states) => StateText.OneOf("State_At_Start", states);

    private static string Becomes(string variable, ProceduralState state) => $"{variable} := {StateText.Value(state)};";

    private static string ParameterRange(Parameter parameter)
    {
        double step = (parameter.Resolution / parameter.Unit.Factor).ToDouble();
        return FormattableString.Invariant($"{parameter.Minimum} .. {parameter.Maximum}, one is {step} {parameter.Unit.Symbol}");
    }
}
