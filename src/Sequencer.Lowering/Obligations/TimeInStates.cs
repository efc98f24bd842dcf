using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>No step works for longer than its limit in one go, and no transient state lasts longer than its steps may.</summary>
internal static class TimeInStates
{
    public static void Add(UnitScan scan)
    {
        foreach (ProceduralState state in Sections.All)
        {
            if (EndsInTime(scan, state) is { } time && state == ProceduralState.Aborting)
            {
                BackToIdle.Add(scan, time);
            }
        }

        foreach (Step step in scan.Unit.Steps.Where(step => step.Limit.GoTo is not null || step.Limit.Reaction != Reaction.Alarm))
        {
            EndsInTime(scan, step);
        }
    }

    /// <summary>The most scans that the unit is in a transient state in one go; null where its steps may go on for ever.</summary>
    private static long? MostScans(UnitScan scan, ProceduralState state) =>
        LongestTime.Of(scan.Unit, scan.ScanMilliseconds).FirstOrDefault(time => time.State == state) is { } time
            ? time.Most / scan.ScanMilliseconds
            : state == ProceduralState.Restarting ? Math.Max(0, scan.Unit.RestartWait.Scans(scan.ScanMilliseconds)) + 1 : 1;

    private static TransientTime? EndsInTime(UnitScan scan, ProceduralState state)
    {
        if (MostScans(scan, state) is not { } most)
        {
            return null;
        }

        ExpressionBuilder build = scan.Build;
        Origin origin = new(scan.Unit.Span);
        string word = Sections.Word(state);
        Expression now = scan.State.IsNow(state);
        (Expression before, Expression age) = StandardObligations.ScansInARow(scan, $"{word}.age", now, scan.State.WasAtStart(state), most, origin);
        TransientTime time = new(age, most, [.. Guesses(scan, state, age, most)]);
        StandardObligations.Require(
            scan, $"{word}.ends", "no transient state lasts longer than its steps may", $"{state} of {scan.Unit.Name} ends",
            $"never {StandardObligations.State(scan, state)} for more than {Words(scan, most)}", RequirementKind.Response,
            build.Not(build.And(now, build.LessOrEqual(build.Constant(most), before))), origin, time.Guesses.AsSpan());
        return time;
    }

    /// <summary>How long the state has lasted, by the clock of its wait and by those of its steps, each behind the longest way to it.</summary>
    private static IEnumerable<Expression> Guesses(UnitScan scan, ProceduralState state, Expression age, long most)
    {
        ExpressionBuilder build = scan.Build;
        Expression none = build.Equal(age, build.Constant(0));
        yield return build.Or(none, scan.State.StoredIs(state));
        Step[] steps = [.. scan.Unit.Steps.Where(step => step.State == state)];
        if (state == ProceduralState.Restarting)
        {
            yield return build.Or(build.LessOrEqual(age, scan.State.StoredRestartClock), build.Or(steps.Select(step => scan.Situation.Stored(step.Number).Active)));
            yield return build.Or(none, build.LessOrEqual(age, scan.State.StoredRestartClock), build.Equal(scan.State.StoredRestartClock, build.Constant(scan.State.RestartWait)));
        }
        else if (steps.Length == 0)
        {
            yield return build.LessOrEqual(age, build.Constant(1));
        }

        foreach ((int step, long before) in LongestTime.Before(scan.Unit, state, scan.ScanMilliseconds))
        {
            (Expression active, Expression clock) = scan.Situation.Stored(step);
            yield return build.Or(none, build.Not(active), build.LessOrEqual(age, build.Add(clock, build.Constant(before))));
        }

        yield return build.Implies(build.LessOrEqual(build.Constant(most), age), build.Not(build.Or(steps.Select(step => scan.Situation.Stored(step.Number).Active))));
    }

    private static void EndsInTime(UnitScan scan, Step step)
    {
        ExpressionBuilder build = scan.Build;
        Origin origin = new(step.Limit.Span);
        long limit = Math.Max(1, step.Limit.Time.Scans(scan.ScanMilliseconds));
        string name = FormattableString.Invariant($"step{step.Number}");
        Expression works = build.And(
            scan.StepNow(step.Number), scan.WorksNow(step), build.Not(build.And(scan.Situation.Activated(step.Number), scan.StepAtStart(step.Number))));
        (Expression before, Expression age) = StandardObligations.ScansInARow(
            scan, $"{name}.age", works, build.And(scan.StepAtStart(step.Number), scan.State.WasAtStart(step.State)), limit, origin);
        (Expression active, Expression clock) = scan.Situation.Stored(step.Number);
        Expression within = build.And(active, scan.State.StoredIs(step.State), build.LessOrEqual(age, clock));
        StandardObligations.Require(
            scan, $"{name}.ends", "each step ends within its limit", FormattableString.Invariant($"Step {step.Number} of {scan.Unit.Name} ends within its limit"),
            FormattableString.Invariant($"never {scan.Unit.Name} works in step {step.Number} for more than {Words(scan, limit)} in one go"), RequirementKind.Response,
            build.Not(build.And(works, build.LessOrEqual(build.Constant(limit), before))), origin,
            build.Or(build.Equal(age, build.Constant(0)), within));
    }

    private static string Words(UnitScan scan, long scans) => new Duration(scans * scan.ScanMilliseconds).InParts();
}
