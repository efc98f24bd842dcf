using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Which of two devices is on duty. A device is available unless it has failed, is in manual, or was
/// interlocked last scan; when the one on duty is not and the other is, the other takes over and keeps it.
/// </summary>
internal sealed class Pairs
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, DeclaredState> _second = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DeclaredState> _barred = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (Expression Rotated, Expression Now)> _duty = new(StringComparer.Ordinal);

    public Pairs(UnitScan scan)
    {
        _scan = scan;
        foreach (DutyPair pair in scan.Unit.Pairs)
        {
            Origin origin = new(pair.Span);
            _second[pair.Name] = scan.System.State(_scan.Own($"{pair.Name}.second"), pair.SecondAtFirst, retained: true, StatePurpose.Control, origin);
            foreach (Output member in Members(pair))
            {
                _barred[member.Tag] = scan.System.State($"{member.Tag}.barred", false, retained: false, StatePurpose.Control, origin);
            }
        }
    }

    public Expression OnDuty(DutyFact fact)
    {
        Expression second = Duty(_scan.Unit.Pairs.First(pair => pair.Name == fact.Pair)).Now;
        return fact.First ? _scan.Build.Not(second) : second;
    }

    public void Finish()
    {
        foreach (DutyPair pair in _scan.Unit.Pairs)
        {
            (Expression rotated, Expression now) = Duty(pair);
            _second[pair.Name].Next = now;
            Dictionary<string, Expression> interlocked = Members(pair).ToDictionary(member => member.Tag, _scan.Finals.Interlocked);
            foreach (Output member in Members(pair))
            {
                _barred[member.Tag].Next = interlocked[member.Tag];
            }

            Tell(pair, rotated, now, interlocked);
        }
    }

    private (Expression Rotated, Expression Now) Duty(DutyPair pair)
    {
        if (!_duty.TryGetValue(pair.Name, out (Expression Rotated, Expression Now) duty))
        {
            ExpressionBuilder build = _scan.Build;
            Expression second = _second[pair.Name].Current;
            Expression rotated = pair.Rotates ? build.IfThenElse(_scan.State.Started, build.Not(second), second) : second;
            Expression first = Available(pair.First);
            Expression other = Available(pair.Second);
            Expression now = build.IfThenElse(rotated, build.Or(other, build.Not(first)), build.And(other, build.Not(first)));
            duty = (rotated, _scan.System.Define(_scan.Own($"{pair.Name}.second.now"), now, _second[pair.Name].Origin));
            _duty.Add(pair.Name, duty);
        }

        return duty;
    }

    private Expression Available(Output member) => _scan.Build.Not(_scan.Build.Or(
        _scan.Discrepancies.Now(member), _scan.Finals.InManual(member), _barred[member.Tag].Current));

    private void Tell(DutyPair pair, Expression rotated, Expression now, Dictionary<string, Expression> interlocked)
    {
        ExpressionBuilder build = _scan.Build;
        SystemBuilder system = _scan.System;
        Origin origin = new(pair.Span);
        Expression asked = build.Or(Members(pair).Select(_scan.Finals.Asked));
        Expression first = _scan.Final(pair.First);
        Expression second = _scan.Final(pair.Second);
        system.Alarm(_scan.Own($"{pair.Name}.changed"), pair.HasChangedInWords(), build.Not(build.Equal(rotated, now)), origin);
        system.Alarm(
            _scan.Own($"{pair.Name}.none"), pair.HasNoneInWords(), build.And(asked, build.Not(build.Or(Available(pair.First), Available(pair.Second)))), origin);
        system.Require(new Requirement(
            _scan.Own($"{pair.Name}.apart"),
            $"{pair.First.Tag} and {pair.Second.Tag} never both",
            $"never {pair.First.Tag} and {pair.Second.Tag}",
            RequirementKind.Never,
            build.Not(build.And(first, second)),
            origin));
        long within = pair.Within.Scans(_scan.ScanMilliseconds);
        Expression met = build.And(Members(pair).Select(member =>
        {
            Expression waits = build.And(asked, build.Not(interlocked[member.Tag]), Available(member), build.Not(build.Or(first, second)));
            return build.Not(Clocks.Lasting(system, _scan.Own($"{pair.Name}.waits_for_{member.Tag}"), waits, within, StatePurpose.Monitor, origin));
        }));
        system.Require(new Requirement(
            _scan.Own($"{pair.Name}.met"),
            $"A demand on {pair.Name} is met within its time while one is healthy",
            $"never {pair.Name} asked and one of {pair.First.Tag}, {pair.Second.Tag} available and none of them on stays {pair.Within}",
            RequirementKind.Response,
            met,
            origin));
    }

    private static Output[] Members(DutyPair pair) => [pair.First, pair.Second];
}
