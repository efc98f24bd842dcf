using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Protections that the operator has taken out of force: from the edge of his command, with the role's
/// input true, until he lets go, the role goes or the time is over; one at a time in a unit, ties by
/// written order. A loss of power ends it, and a command still held then begins none.
/// </summary>
internal sealed class Overrides
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _now = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _roles = new(StringComparer.Ordinal);

    public Overrides(UnitScan scan)
    {
        _scan = scan;
        List<Waiver> waivers = [.. scan.Unit.Overrides.Select(Declare)];
        Expression taken = scan.Build.Or(waivers.Select(waiver => waiver.Continues));
        foreach (Waiver waiver in waivers)
        {
            Expression granted = scan.Build.And(waiver.Asked, waiver.Role, scan.Build.Not(taken));
            taken = scan.Build.Or(taken, granted);
            Decide(waiver, granted);
        }
    }

    /// <summary>The protection is overridden in this scan; false where nothing may override it.</summary>
    public Expression Now(string protection) => _now.GetValueOrDefault(protection, _scan.Build.False);

    private Waiver Declare(Override waiver)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(waiver.Span);
        string path = _scan.Own($"{waiver.Protection}.override");
        if (!_roles.TryGetValue(waiver.Role, out Expression? role))
        {
            role = _roles[waiver.Role] = _scan.System.Input(_scan.Named($"role.{waiver.Role}"));
        }

        Expression command = _scan.System.Input(path);
        DeclaredState before = _scan.System.State($"{path}.before", true, retained: false, StatePurpose.Control, origin);
        before.Next = command;
        long scans = waiver.AtMost.Scans(_scan.ScanMilliseconds);
        DeclaredState active = _scan.System.State($"{path}.active", false, retained: false, StatePurpose.Control, origin);
        DeclaredState clock = _scan.System.State($"{path}.clock", new IntegerRange(0, scans), 0, retained: false, StatePurpose.Control, origin);
        Expression over = build.LessOrEqual(build.Constant(scans), clock.Current);
        return new Waiver(
            waiver,
            path,
            command,
            role,
            build.And(command, build.Not(before.Current)),
            build.And(active.Current, command, role, build.Not(over)),
            build.And(active.Current, command, over),
            active,
            clock);
    }

    private void Decide(Waiver waiver, Expression granted)
    {
        ExpressionBuilder build = _scan.Build;
        SystemBuilder system = _scan.System;
        Override clause = waiver.Clause;
        Origin origin = new(clause.Span);
        long scans = waiver.Clock.Variable.Range.Maximum;
        Expression now = system.Define($"{waiver.Path}.now", build.Or(waiver.Continues, granted), origin);
        waiver.Active.Next = now;
        waiver.Clock.Next = build.IfThenElse(now, Clocks.UpTo(build, waiver.Clock.Current, scans), build.Constant(0));
        _now[clause.Protection] = now;
        DeclaredState expired = system.State($"{waiver.Path}.expired", false, retained: true, StatePurpose.Control, origin);
        expired.Next = build.Or(waiver.Expires, build.And(expired.Current, waiver.Command));
        system.Alarm(waiver.Path, clause.IsActiveInWords(), now, origin);
        system.Alarm($"{waiver.Path}.expired", clause.HasExpiredInWords(), expired.Next, origin);
        system.Alarm($"{waiver.Path}.refused", clause.IsRefusedInWords(), build.And(waiver.Asked, build.Not(granted)), origin);
        DeclaredState age = system.State($"{waiver.Path}.age", new IntegerRange(0, scans), 0, retained: false, StatePurpose.Monitor, origin);
        age.Next = build.IfThenElse(now, Clocks.UpTo(build, age.Current, scans), build.Constant(0));
        system.Require(new Requirement(
            $"{waiver.Path}.ends",
            $"The override of {clause.Protection} ends within its time",
            $"after {clause.Protection} overridden not {clause.Protection} overridden within {clause.AtMost}",
            RequirementKind.Response,
            build.Not(build.And(now, build.LessOrEqual(build.Constant(scans), age.Current))),
            origin));
    }

    private sealed record Waiver(
        Override Clause,
        string Path,
        Expression Command,
        Expression Role,
        Expression Asked,
        Expression Continues,
        Expression Expires,
        DeclaredState Active,
        DeclaredState Clock);
}
