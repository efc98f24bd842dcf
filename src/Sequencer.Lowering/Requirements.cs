using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>What must hold in every scan; a response is watched by a monitor that counts real scans and never freezes.</summary>
internal static class Requirements
{
    public static void Lower(UnitScan scan)
    {
        foreach (RequirementClause clause in scan.Unit.Requirements)
        {
            ExpressionBuilder build = scan.Build;
            ConditionPlace Place(string part) => new(scan.Own($"{clause.Name}.{part}"), thisScansOutputs: true, purpose: StatePurpose.Monitor);
            Expression holds = clause.Fact switch
            {
                RequiredNever never => build.Not(ConditionLowering.Lower(scan, never.Condition, Place("never")).Possibly),
                RequiredAlways always => build.Implies(
                    always.While is null ? build.True : ConditionLowering.Lower(scan, always.While, Place("while")).Possibly,
                    ConditionLowering.Lower(scan, always.Condition, Place("always")).Surely),
                RequiredResponse response => Response(scan, clause, response, Place),
                _ => throw new System.Diagnostics.UnreachableException($"no meaning of {clause.Fact.GetType().Name}"),
            };
            RequirementKind kind = clause.Fact is RequiredResponse ? RequirementKind.Response : RequirementKind.Never;
            scan.System.Require(new Requirement(scan.Own(clause.Name), clause.Title, clause.Statement, kind, holds, new Origin(clause.Span)));
        }
    }

    private static Expression Response(UnitScan scan, RequirementClause clause, RequiredResponse response, Func<string, ConditionPlace> place)
    {
        ExpressionBuilder build = scan.Build;
        Origin origin = new(clause.Span);
        Expression cause = ConditionLowering.Lower(scan, response.Trigger, place("after")).Possibly;
        Expression goal = Goal(scan, response, place);
        long bound = response.Scans ?? response.Within.Scans(scan.ScanMilliseconds);
        DeclaredState waiting = scan.System.State(scan.Own($"{clause.Name}.waiting"), false, retained: true, StatePurpose.Monitor, origin);
        Expression pending = build.And(build.Or(waiting.Current, cause), build.Not(goal));
        waiting.Next = pending;
        if (bound == 0)
        {
            return build.Not(pending);
        }

        DeclaredState age = scan.System.State(scan.Own($"{clause.Name}.age"), new IntegerRange(0, bound), 0, retained: true, StatePurpose.Monitor, origin);
        Expression since = build.IfThenElse(waiting.Current, age.Current, build.Constant(0));
        age.Next = build.IfThenElse(pending, Clocks.UpTo(build, since, bound), build.Constant(0));
        return build.Not(build.And(pending, build.LessOrEqual(build.Constant(bound), since)));
    }

    private static Expression Goal(UnitScan scan, RequiredResponse response, Func<string, ConditionPlace> place)
    {
        ExpressionBuilder build = scan.Build;
        if (response.Goal == ResponseGoal.Condition)
        {
            Condition goal = response.GoalCondition ?? throw new InvalidOperationException("a response without a goal");
            return ConditionLowering.Lower(scan, goal, place("goal")).Surely;
        }

        IEnumerable<Expression> analogues = scan.Unit.AnalogueOutputs.Select(output => build.Equal(
            scan.Analogues.Final(output),
            build.Constant(response.Goal == ResponseGoal.EverythingSafe ? output.Safe : output.Emergency)));
        return build.And(analogues.Concat(scan.Unit.Outputs.Select(output => build.Equal(
            scan.Finals.InPlant(output),
            response.Goal == ResponseGoal.EverythingSafe
                ? RestValues.Value(scan, output, output.Safe, "safe")
                : RestValues.Value(scan, output, output.Emergency, "emergency")))));
    }
}
