using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Something that an operator with a role may have for a time: from the edge of his command, with the role's input true, until
/// he lets go, the role goes or the time is over. A loss of power ends it, and a command still held then begins none.
/// </summary>
internal sealed class TimedCommand
{
    private readonly SystemBuilder _system;
    private readonly string _path;
    private readonly Origin _origin;
    private readonly Expression _command;
    private readonly Expression _role;
    private readonly Expression _over;
    private readonly DeclaredState _active;
    private readonly DeclaredState _clock;
    private readonly long _scans;

    /// <param name="scan">The unit.</param>
    /// <param name="path">The name of the command.</param>
    /// <param name="role">Whose it is.</param>
    /// <param name="scans">How long it lasts at most.</param>
    /// <param name="origin">Where it is written.</param>
    public TimedCommand(UnitScan scan, string path, string role, long scans, Origin origin)
    {
        ExpressionBuilder build = scan.Build;
        _system = scan.System;
        _path = path;
        _origin = origin;
        _scans = scans;
        _role = scan.Roles.Of(role);
        _command = _system.Input(path);
        DeclaredState before = _system.State($"{path}.before", true, retained: false, StatePurpose.Control, origin);
        before.Next = _command;
        _active = _system.State($"{path}.active", false, retained: false, StatePurpose.Control, origin);
        _clock = _system.State($"{path}.clock", new IntegerRange(0, scans), 0, retained: false, StatePurpose.Control, origin);
        _over = build.LessOrEqual(build.Constant(scans), _clock.Current);
        Asked = build.And(_command, build.Not(before.Current));
        Continues = build.And(_active.Current, _command, _role, build.Not(_over));
    }

    /// <summary>The edge of the command.</summary>
    public Expression Asked { get; }

    /// <summary>It was there in the last scan, and nothing ends it.</summary>
    public Expression Continues { get; }

    /// <summary>Asked for by somebody who may.</summary>
    public Expression AskedByRole => _system.Expressions.And(Asked, _role);

    /// <summary>What is so in this scan; raises its alarms and owes that it ends.</summary>
    public Expression Decide(Expression continues, Expression granted, (string IsActive, string HasExpired, string IsRefused) words, (string Title, string Statement) ends)
    {
        ExpressionBuilder build = _system.Expressions;
        Expression now = _system.Define($"{_path}.now", build.Or(continues, granted), _origin);
        _active.Next = now;
        _clock.Next = build.IfThenElse(now, Clocks.UpTo(build, _clock.Current, _scans), build.Constant(0));
        DeclaredState expired = _system.State($"{_path}.expired", false, retained: true, StatePurpose.Control, _origin);
        expired.Next = build.Or(build.And(_active.Current, _command, _over), build.And(expired.Current, _command));
        _system.Alarm(_path, words.IsActive, now, _origin);
        _system.Alarm($"{_path}.expired", words.HasExpired, expired.Next, _origin);
        _system.Alarm($"{_path}.refused", words.IsRefused, build.And(Asked, build.Not(granted)), _origin);
        DeclaredState age = _system.State($"{_path}.age", new IntegerRange(0, _scans), 0, retained: false, StatePurpose.Monitor, _origin);
        age.Next = build.IfThenElse(now, Clocks.UpTo(build, age.Current, _scans), build.Constant(0));
        _system.Require(new Requirement(
            $"{_path}.ends",
            ends.Title,
            ends.Statement,
            RequirementKind.Response,
            build.Not(build.And(now, build.LessOrEqual(build.Constant(_scans), age.Current))),
            _origin));
        return now;
    }
}
