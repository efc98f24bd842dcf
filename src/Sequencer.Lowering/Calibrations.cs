using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Values put in place of readings, for a time, one at a time in a unit, while it is Idle: a start is refused meanwhile, so that
/// none outlasts it.
/// </summary>
internal sealed class Calibrations
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _now = new(StringComparer.Ordinal);

    public Calibrations(UnitScan scan)
    {
        _scan = scan;
        if (scan.Unit.Calibrations.IsEmpty)
        {
            return;
        }

        ExpressionBuilder build = scan.Build;
        DeclaredState idle = scan.System.State(
            scan.Named("calibration.idle"), false, retained: false, StatePurpose.Control, new Origin(scan.Unit.Calibrations[0].Span));
        scan.System.Later(() => idle.Next = scan.State.EndsIn(ProceduralState.Idle));
        List<(Calibration Clause, TimedCommand Command)> all = [.. scan.Unit.Calibrations.Select(calibration => (calibration, new TimedCommand(
            scan, $"{calibration.Input.Tag}.calibration", calibration.Role, calibration.AtMost.Scans(scan.ScanMilliseconds), new Origin(calibration.Span))))];
        Expression taken = build.Or(all.Select(one => one.Command.Continues));
        foreach ((Calibration clause, TimedCommand command) in all)
        {
            Expression granted = build.And(command.AskedByRole, idle.Current, build.Not(taken));
            taken = build.Or(taken, granted);
            _now[clause.Input.Tag] = command.Decide(
                build.And(command.Continues, idle.Current),
                granted,
                (clause.IsActiveInWords(), clause.HasExpiredInWords(), clause.IsRefusedInWords()),
                ($"The calibration of {clause.Input.Tag} ends within its time", $"after {clause.Input.Tag}.calibration not {clause.Input.Tag}.calibration within {clause.AtMost}"));
        }
    }

    /// <summary>Some reading of the unit has a value put in its place in this scan.</summary>
    public Expression Any => _scan.Build.Or(_now.Values);

    /// <summary>The reading has a value put in its place in this scan; false where none may be.</summary>
    public Expression Now(string reading) => _now.GetValueOrDefault(reading, _scan.Build.False);

    /// <summary>The channel as the program takes it: what came in, or what was put in its place.</summary>
    public (Expression Value, Expression Fault) Taken(AnalogueInput input, Expression value, Expression fault)
    {
        if (!_now.TryGetValue(input.Tag, out Expression? now))
        {
            return (value, fault);
        }

        Expression put = _scan.System.Input($"{input.Tag}.put", new IntegerRange(input.Minimum, input.Maximum));
        return (_scan.Build.IfThenElse(now, put, value), _scan.Build.And(fault, _scan.Build.Not(now)));
    }

    /// <summary>What calibration owes without being asked: never in a batch.</summary>
    public void Owed()
    {
        foreach (Calibration calibration in _scan.Unit.Calibrations)
        {
            _scan.System.Require(new Requirement(
                $"{calibration.Input.Tag}.calibration.idle",
                $"No value stands in place of {calibration.Input.Tag} in a batch",
                $"never {calibration.Input.Tag}.calibration and not {_scan.Unit.Name} is Idle",
                RequirementKind.Never,
                _scan.Build.Or(_scan.Build.Not(Now(calibration.Input.Tag)), _scan.State.IsNow(ProceduralState.Idle)),
                new Origin(calibration.Span)));
        }
    }
}
