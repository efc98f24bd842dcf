using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>What the active steps ask of one output, and those of the unit that owns it where it is shared: on, off, or nothing.</summary>
internal static class StepDemands
{
    public static (Expression On, Expression Off) Of(UnitScan scan, Output output)
    {
        List<Expression> on = [scan.Doses.Demands(output)];
        List<Expression> off = [];
        foreach (Step step in scan.Unit.Steps)
        {
            int number = 0;
            foreach (DriveAction action in step.Actions.OfType<DriveAction>().Where(action => action.Output.Tag == output.Tag))
            {
                number++;
                string name = scan.StepNamed(step.Number, FormattableString.Invariant($"{output.Tag}{(number == 1 ? "" : "_" + number)}"));
                (action.On ? on : off).Add(scan.System.Define($"{name}.asks", Acts(scan, step, action, name), new Origin(action.Span)));
            }
        }

        foreach (Step step in scan.Unit.Steps)
        {
            foreach (KeepAction keep in step.Actions.OfType<KeepAction>().Where(keep => keep.Output.Tag == output.Tag))
            {
                (keep.On ? on : off).Add(scan.Build.And(Kept(scan, step, keep), scan.RunningNow));
            }
        }

        foreach ((Expression asksOn, Expression asksOff) in Borrowed(scan, output))
        {
            on.Add(asksOn);
            off.Add(asksOff);
        }

        return (scan.Build.Or(on), scan.Build.Or(off));
    }

    /// <summary>What each unit that may own the output asks of it, while it does.</summary>
    public static IEnumerable<(Expression On, Expression Off)> Borrowed(UnitScan scan, Output output)
    {
        foreach ((UnitProgram unit, string equipment) in scan.Site.Program.DriversOf(scan.Unit, output))
        {
            (Expression asksOn, Expression asksOff) = scan.Site.Unit(unit.Name).Claims.Asked(QualifiedName.Of(scan.Unit.Name, output.Tag));
            Expression owns = scan.Site.Queue(equipment).Owns(unit.Name);
            yield return (scan.Build.And(asksOn, owns), scan.Build.And(asksOff, owns));
        }
    }

    private static Expression Acts(UnitScan scan, Step step, DriveAction action, string name)
    {
        ExpressionBuilder build = scan.Build;
        List<Expression> conditions = [scan.StepNow(step.Number), Works(scan, step, action), build.Not(scan.Situation.PassedOverNow(step.Number))];
        long after = action.After.Scans(scan.ScanMilliseconds);
        if (after > 0)
        {
            conditions.Add(build.LessOrEqual(build.Constant(after), scan.Situation.Elapsed(step.Number)));
        }

        if (action is { OnceABatch: true, For: { } share })
        {
            conditions.Add(Owed(scan, step, action, share.Scans(scan.ScanMilliseconds), name));
        }

        if (action.AtEach is { } edge)
        {
            conditions.Add(SinceEdge(scan, step, edge, action.For.GetValueOrDefault().Scans(scan.ScanMilliseconds), name));
        }

        if (action is { For: { } length, OnceABatch: false, AtEach: null })
        {
            conditions.Add(build.Less(scan.Situation.Elapsed(step.Number), build.Constant(after + length.Scans(scan.ScanMilliseconds))));
        }

        if (action.While is not null)
        {
            conditions.Add(ConditionLowering.Lower(scan, action.While, new ConditionPlace($"{name}.while", step: step)).Surely);
        }

        if (action.Until is not null)
        {
            conditions.Add(build.Not(Done(scan, step, action, action.Until, name)));
        }

        return build.And(conditions);
    }

    private static Expression Works(UnitScan scan, Step step, DriveAction action) =>
        action.AtOnce ? scan.State.IsNow(step.State) : scan.WorksNow(step);

    /// <summary>The end was possibly reached in this activation; it stays reached.</summary>
    private static Expression Done(UnitScan scan, Step step, DriveAction action, Condition until, string name)
    {
        ExpressionBuilder build = scan.Build;
        DeclaredState done = scan.System.State($"{name}.done", false, retained: true, StatePurpose.Control, new Origin(action.Span));
        Truth end = ConditionLowering.Lower(scan, until, new ConditionPlace($"{name}.until", step: step));
        Expression before = build.And(done.Current, build.Not(scan.Activated(step.Number)));
        Expression now = build.Or(before, build.And(end.Possibly, scan.StepNow(step.Number), Works(scan, step, action)));
        done.Next = now;
        return now;
    }

    /// <summary>
    /// The batch has not had all its scans of the action; one counts when the output obeys while the step is
    /// active, whoever demands it, and none is forgotten before the next start.
    /// </summary>
    private static Expression Owed(UnitScan scan, Step step, DriveAction action, long scans, string name)
    {
        ExpressionBuilder build = scan.Build;
        DeclaredState given = scan.System.State($"{name}.given", new IntegerRange(0, scans), 0, retained: true, StatePurpose.Control, new Origin(action.Span));
        scan.System.Later(() =>
        {
            Expression final = scan.Final(action.Output);
            Expression counts = build.And(scan.StepNow(step.Number), action.On ? final : build.Not(final));
            given.Next = build.IfThenElse(
                scan.State.Started, build.Constant(0), build.IfThenElse(counts, Clocks.UpTo(build, given.Current, scans), given.Current));
        });
        return build.And(build.Not(scan.State.Started), build.Less(given.Current, build.Constant(scans)));
    }

    /// <summary>An edge came in this scan or within the time before; it begins anew with each, and is cut short outside the state that the step works in.</summary>
    private static Expression SinceEdge(UnitScan scan, Step step, EdgeFact edge, long scans, string name)
    {
        ExpressionBuilder build = scan.Build;
        DeclaredState left = scan.System.State($"{name}.left", new IntegerRange(0, scans), 0, retained: false, StatePurpose.Control, new Origin(edge.Span));
        Expression begins = ConditionLowering.Lower(scan, edge, new ConditionPlace($"{name}.each", step: step)).Surely;
        Expression goes = build.And(scan.StepNow(step.Number), scan.WorksNow(step));
        Expression more = build.And(build.Not(scan.Activated(step.Number)), build.Less(build.Constant(0), left.Current));
        Expression rest = build.IfThenElse(begins, build.Constant(scans), build.IfThenElse(more, left.Current, build.Constant(0)));
        left.Next = build.IfThenElse(goes, build.Maximum(build.Constant(0), build.Subtract(rest, build.Constant(1))), build.Constant(0));
        return build.Or(begins, more);
    }

    /// <summary>Stored at the entry of its step; let go at the entry of its end, and by every end of the batch.</summary>
    private static Expression Kept(UnitScan scan, Step step, KeepAction keep)
    {
        ExpressionBuilder build = scan.Build;
        DeclaredState kept = scan.System.State(
            scan.StepNamed(step.Number, $"keep_{keep.Output.Tag}"), false, retained: true, StatePurpose.Control, new Origin(keep.Span));
        Expression inProgress = build.Or(
            scan.RunningNow, scan.State.IsNow(ProceduralState.Holding), scan.State.IsNow(ProceduralState.Held), scan.State.IsNow(ProceduralState.Restarting));
        Expression now = build.And(
            inProgress, build.Not(scan.Activated(keep.Until)), build.Or(scan.Activated(step.Number), build.And(kept.Current, build.Not(scan.State.Started))));
        kept.Next = now;
        return now;
    }
}
