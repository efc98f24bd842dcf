using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// A share of the batch, given once: what was given is counted in scans of delivery, whoever demanded
/// them while the step was active, and forgotten only by the next start. Of a reading the value counts
/// that it has in the first scan of its step in the batch in which it is usable.
/// </summary>
internal sealed class AmountDose
{
    private readonly UnitScan _scan;
    private readonly string _name;
    private readonly Origin _origin;
    private readonly long _most;
    private readonly long _pulse;
    private readonly DeclaredState _given;
    private readonly DeclaredState? _left;
    private readonly DeclaredState? _booked;
    private readonly DeclaredState? _basis;
    private Expression? _demand;

    public AmountDose(UnitScan scan, Step step, AmountDoseAction action)
    {
        _scan = scan;
        Step = step;
        Action = action;
        _name = scan.StepNamed(step.Number, $"dose_{action.Output.Tag}");
        _origin = new Origin(action.Span);
        _most = AmountDoseMeasure.Most(action, scan.ScanMilliseconds);
        _pulse = action.Pulse?.Scans(scan.ScanMilliseconds) ?? 0;
        SystemBuilder system = scan.System;
        _given = system.State($"{_name}.given", new IntegerRange(0, _most), 0, retained: true, StatePurpose.Control, _origin);
        if (_pulse > 0)
        {
            _left = system.State($"{_name}.left", new IntegerRange(0, _pulse), 0, retained: false, StatePurpose.Control, _origin);
        }

        if (action.Of is ReadingQuantity reading)
        {
            _booked = system.State($"{_name}.booked", false, retained: true, StatePurpose.Control, _origin);
            IntegerRange range = new(reading.Input.Minimum, reading.Input.Maximum);
            _basis = system.State($"{_name}.basis", range, reading.Input.Minimum, retained: true, StatePurpose.Control, _origin);
        }
    }

    public Step Step { get; }

    public AmountDoseAction Action { get; }

    public Expression Demand => _demand ?? throw new InvalidOperationException("the dose has not been lowered yet");

    /// <summary>All of it is given, at the start of the scan; or the output has given all that a batch may have.</summary>
    public Expression Dosed
    {
        get
        {
            ExpressionBuilder build = _scan.Build;
            Expression full = build.And(_booked?.Current ?? build.True, build.Not(Owes), build.Not(InPulse));
            return build.Or(full, Action.Of is null ? _scan.Memory.Exhausted(Action.Output) : build.False);
        }
    }

    public Expression Ask(Reaction reaction) => _scan.Build.Or(
        reaction == Reaction.Hold ? Unusable : _scan.Build.False,
        reaction == Action.MaximumReaction ? Exhausted : _scan.Build.False);

    /// <summary>What is asked for, once state and situation of this scan are known.</summary>
    public void Lower()
    {
        ExpressionBuilder build = _scan.Build;
        Expression goes = build.And(_scan.StepNow(Step.Number), _scan.WorksNow(Step), build.Not(_scan.State.Started));
        Expression may = build.And(_booked?.Current ?? build.True, Owes, Fits);
        Expression gives = build.And(goes, _left is null ? may : build.Or(InPulse, may));
        _demand = _scan.System.Define($"{_name}.gives", gives, _origin);
        if (Action.Of is ReadingQuantity reading)
        {
            _scan.System.Alarm($"{_name}.unusable", $"{reading.Input.Tag} not usable: {Action.Output.Tag} does not dose", Unusable, _origin);
        }

        if (Action.Of is not null)
        {
            _scan.System.Alarm($"{_name}.exhausted", $"{Action.Output.Tag} has given all that a batch may have", Exhausted, _origin);
        }

        _scan.System.Later(Count);
    }

    private Expression InPulse => _left is null ? _scan.Build.False : _scan.Build.Less(_scan.Build.Constant(0), _left.Current);

    private Expression AtWork => _scan.Build.And(_scan.StepAtStart(Step.Number), _scan.State.WasAtStart(ProceduralState.Running), _scan.Claims.Owns(Step));

    /// <summary>The share is not given yet; in pulses, a whole pulse of it is due.</summary>
    private Expression Owes
    {
        get
        {
            ExpressionBuilder build = _scan.Build;
            if (Action.Of is not { } of)
            {
                return build.Less(_given.Current, build.Constant(_most));
            }

            (long given, long basis) = AmountDoseMeasure.Factors(Action, _scan.ScanMilliseconds);
            Expression share = build.Scale(basis, _basis?.Current ?? QuantityLowering.Steps(_scan, new ConditionPlace(_name), of));
            return _left is null
                ? build.Less(build.Scale(given, _given.Current), share)
                : build.LessOrEqual(build.Scale(given, build.Add(_given.Current, build.Constant(_pulse))), share);
        }
    }

    /// <summary>The maximum is not reached; in pulses, a whole one stays within it.</summary>
    private Expression Fits => _scan.Build.LessOrEqual(
        _scan.Build.Add(_given.Current, _scan.Build.Constant(Math.Max(1, _pulse))), _scan.Build.Constant(_most));

    private Expression Unusable => Action.Of is ReadingQuantity reading && _booked is not null
        ? _scan.Build.And(AtWork, _scan.Build.Not(_booked.Current), _scan.Build.Not(_scan.Sight.Usable(reading.Input, new ConditionPlace(_name))))
        : _scan.Build.False;

    private Expression Exhausted => Action.Of is null
        ? _scan.Build.False
        : _scan.Build.And(AtWork, _booked?.Current ?? _scan.Build.True, Owes, _scan.Build.Not(InPulse), _scan.Build.Not(Fits));

    private void Count()
    {
        ExpressionBuilder build = _scan.Build;
        Expression zero = build.Constant(0);
        Expression one = build.Constant(1);
        Expression on = _scan.Final(Action.Output);
        Expression counts = build.And(_scan.StepNow(Step.Number), on);
        _given.Next = build.IfThenElse(
            _scan.State.Started, zero, build.IfThenElse(counts, Clocks.UpTo(build, _given.Current, _most), _given.Current));
        if (_left is not null)
        {
            Expression before = build.IfThenElse(InPulse, _left.Current, build.Constant(_pulse));
            Expression after = build.IfThenElse(on, build.Maximum(zero, build.Subtract(before, one)), before);
            _left.Next = build.IfThenElse(Demand, after, zero);
        }

        if (Action.Of is ReadingQuantity reading && _booked is not null && _basis is not null)
        {
            Expression books = build.And(AtWork, build.Not(_booked.Current), _scan.Sight.Usable(reading.Input, new ConditionPlace(_name)));
            _booked.Next = build.And(build.Not(_scan.State.Started), build.Or(_booked.Current, books));
            _basis.Next = build.IfThenElse(books, _scan.Reading(reading.Input), _basis.Current);
        }
    }
}
