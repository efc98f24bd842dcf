using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>The clocks of steps: how long each has been active, and how long what it waits for has lasted.</summary>
internal static class StepClockText
{
    public static string LimitReached(UnitText unit, Step step) =>
        FormattableString.Invariant($"({LimitClock(unit, step)} >= {unit.Scans(step.Limit.Time)})");

    public static string LimitClock(UnitText unit, Step step) => unit.Counter(
        UnitText.Memory(step),
        FormattableString.Invariant($"step{step.Number}.clock"),
        unit.Scans(step.Limit.Time),
        FormattableString.Invariant($"scans in step {step.Number}, to its limit of {DurationText.Of(step.Limit.Time)}"));

    public static void Write(UnitText unit, Step step)
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

    public static void Stays(UnitText unit)
    {
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
    }
}
