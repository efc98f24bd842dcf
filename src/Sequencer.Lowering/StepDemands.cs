using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>What the active steps ask of one output: on, off, or nothing.</summary>
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
                (action.On ? on : off).Add(Acts(scan, step, action, name));
            }
        }

        return (scan.Build.Or(on), scan.Build.Or(off));
    }

    private static Expression Acts(UnitScan scan, Step step, DriveAction action, string name)
    {
        ExpressionBuilder build = scan.Build;
        List<Expression> conditions = [scan.StepNow(step.Number), scan.RunningNow];
        long after = action.After.Scans(scan.ScanMilliseconds);
        if (after > 0)
        {
            conditions.Add(build.LessOrEqual(build.Constant(after), scan.Situation.Elapsed(step.Number)));
        }

        if (action.For is { } length)
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

    /// <summary>The end was possibly reached in this activation; it stays reached.</summary>
    private static Expression Done(UnitScan scan, Step step, DriveAction action, Condition until, string name)
    {
        ExpressionBuilder build = scan.Build;
        DeclaredState done = scan.System.State($"{name}.done", false, retained: true, StatePurpose.Control, new Origin(action.Span));
        Truth end = ConditionLowering.Lower(scan, until, new ConditionPlace($"{name}.until", step: step));
        Expression before = build.And(done.Current, build.Not(scan.Activated(step.Number)));
        Expression now = build.Or(before, build.And(end.Possibly, scan.StepNow(step.Number), scan.RunningNow));
        done.Next = now;
        return now;
    }
}
