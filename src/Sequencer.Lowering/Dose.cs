using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Wait, measure, pulse. The wait begins with the step's activation and anew whenever the unit is not
/// Running, so that a restart never begins with a pulse. A pulse is given only where the whole of it
/// stays within the maximum; each measurement before a pulse counts the pulses that moved nothing.
/// </summary>
internal sealed class Dose
{
    private readonly UnitScan _scan;
    private readonly string _name;
    private readonly ConditionPlace _place;
    private readonly Origin _origin;
    private readonly long _pulse;
    private readonly long _finePulse;
    private readonly long _wait;
    private readonly DeclaredState _pulsing;
    private readonly DeclaredState _clock;
    private readonly DeclaredState _fine;
    private readonly DeclaredState _misses;
    private readonly DeclaredState _hasReference;
    private readonly DeclaredState _reference;
    private Expression? _measuredMisses;
    private Expression? _begins;
    private Expression? _isFine;
    private Expression? _unusable;
    private Expression? _exhausted;
    private Expression? _noResponse;
    private Expression? _pulseNow;

    public Dose(UnitScan scan, Step step, DoseAction action)
    {
        _scan = scan;
        Step = step;
        Action = action;
        _name = scan.StepNamed(step.Number, $"dose_{action.Output.Tag}");
        _place = new ConditionPlace(_name);
        _origin = new Origin(action.Span);
        int milliseconds = scan.ScanMilliseconds;
        _pulse = action.Pulse.Scans(milliseconds);
        _finePulse = (action.FinePulse ?? action.Pulse).Scans(milliseconds);
        _wait = action.Wait.Scans(milliseconds);
        SystemBuilder system = scan.System;
        _pulsing = system.State($"{_name}.pulsing", false, retained: false, StatePurpose.Control, _origin);
        _clock = system.State($"{_name}.clock", new IntegerRange(0, Math.Max(_wait, Math.Max(_pulse, _finePulse))), 0, retained: false, StatePurpose.Control, _origin);
        _fine = system.State($"{_name}.fine", false, retained: false, StatePurpose.Control, _origin);
        _misses = system.State($"{_name}.misses", new IntegerRange(0, action.NoResponsePulses), 0, retained: false, StatePurpose.Control, _origin);
        _hasReference = system.State($"{_name}.measured", false, retained: false, StatePurpose.Control, _origin);
        _reference = system.State(
            $"{_name}.reference", new IntegerRange(action.Signal.Minimum, action.Signal.Maximum), action.Signal.Minimum, retained: false, StatePurpose.Control, _origin);
    }

    public Step Step { get; }

    public DoseAction Action { get; }

    public Expression PulseAtStart => _pulsing.Current;

    public Expression PulseNow => Known(_pulseNow);

    private bool Raises => Action.Output.Delivery?.Reagent.Effect != ReagentEffect.Lowers;

    public Expression Ask(Reaction reaction) => _scan.Build.Or(
        reaction == Reaction.Hold ? Known(_unusable) : _scan.Build.False,
        reaction == Action.MaximumReaction ? Known(_exhausted) : _scan.Build.False,
        reaction == Action.NoResponseReaction ? Known(_noResponse) : _scan.Build.False);

    /// <summary>What this scan's measurement says, from the state before the scan and its inputs.</summary>
    public void Measure()
    {
        ExpressionBuilder build = _scan.Build;
        Expression due = build.And(
            _scan.StepAtStart(Step.Number),
            _scan.State.WasAtStart(ProceduralState.Running),
            _scan.Claims.Owns(Step),
            build.Not(_pulsing.Current),
            build.LessOrEqual(build.Constant(_wait), _clock.Current));
        Expression usable = QuantityLowering.Usable(_scan, _place, new ReadingQuantity(Action.Signal, Action.Span), Action.Target);
        Expression shortOf = build.And(due, usable, Short());
        _isFine = Fine();
        _measuredMisses = build.IfThenElse(
            build.And(_hasReference.Current, build.Not(Responded())),
            Clocks.UpTo(build, _misses.Current, Action.NoResponsePulses),
            build.Constant(0));
        Expression dead = build.LessOrEqual(build.Constant(Action.NoResponsePulses), _measuredMisses);
        Expression given = build.Add(
            _scan.Total(Action.Output), build.IfThenElse(_isFine, build.Constant(_finePulse), build.Constant(_pulse)));
        Expression tooMuch = build.Less(
            build.Constant(QuantityMeasure.ScansWithin(Action.Output, Action.Maximum, _scan.ScanMilliseconds)), given);
        _unusable = Fact("unusable", build.And(due, build.Not(usable)));
        _noResponse = Fact("no_response", build.And(shortOf, dead));
        _exhausted = Fact("exhausted", build.And(shortOf, build.Not(dead), tooMuch));
        _begins = build.And(shortOf, build.Not(dead), build.Not(tooMuch));
        _scan.System.Alarm($"{_name}.unusable", $"{Action.Signal.Tag} not usable: {Action.Output.Tag} does not dose", _unusable, _origin);
        _scan.System.Alarm($"{_name}.no_response", $"{Action.Signal.Tag} does not answer to {Action.Output.Tag}", _noResponse, _origin);
        _scan.System.Alarm($"{_name}.exhausted", $"{Action.Output.Tag} has given all that a batch may have", _exhausted, _origin);
    }

    /// <summary>What follows, once state and situation of this scan are known.</summary>
    public void Pulse()
    {
        ExpressionBuilder build = _scan.Build;
        Expression zero = build.Constant(0);
        Expression works = build.And(_scan.StepNow(Step.Number), _scan.WorksNow(Step));
        Expression goes = build.And(works, build.Not(_scan.Activated(Step.Number)));
        Expression length = build.IfThenElse(_fine.Current, build.Constant(_finePulse), build.Constant(_pulse));
        Expression continues = build.And(_pulsing.Current, build.Less(_clock.Current, length));
        Expression begins = Fact("begins", build.And(goes, Known(_begins)));
        Expression pulse = Fact("pulse", build.And(goes, build.Or(Known(_begins), continues)));
        _pulseNow = pulse;
        _pulsing.Next = pulse;
        _fine.Next = build.And(pulse, build.IfThenElse(begins, Known(_isFine), _fine.Current));
        Expression anew = build.Or(begins, build.Not(goes), build.And(_pulsing.Current, build.Not(continues)));
        Expression counted = Clocks.UpTo(build, build.IfThenElse(anew, zero, _clock.Current), _clock.Variable.Range.Maximum);
        _clock.Next = build.IfThenElse(works, counted, zero);
        _hasReference.Next = build.And(goes, build.Or(begins, _hasReference.Current));
        _reference.Next = build.IfThenElse(begins, _scan.Reading(Action.Signal), _reference.Current);
        _misses.Next = build.IfThenElse(goes, build.IfThenElse(begins, Known(_measuredMisses), _misses.Current), zero);
    }

    private Expression Short()
    {
        Expression[] sides = QuantityLowering.InCommonMeasure(_scan, _place, new ReadingQuantity(Action.Signal, Action.Span), Action.Target);
        return Raises ? _scan.Build.Less(sides[0], sides[1]) : _scan.Build.Less(sides[1], sides[0]);
    }

    private Expression Fine()
    {
        if (Action.FineWithin is null)
        {
            return _scan.Build.False;
        }

        Expression[] sides = QuantityLowering.InCommonMeasure(
            _scan, _place, new ReadingQuantity(Action.Signal, Action.Span), Action.Target, Action.FineWithin);
        ExpressionBuilder build = _scan.Build;
        Expression distance = Raises ? build.Subtract(sides[1], sides[0]) : build.Subtract(sides[0], sides[1]);
        return build.LessOrEqual(distance, sides[2]);
    }

    private Expression Responded()
    {
        ExpressionBuilder build = _scan.Build;
        Expression reading = _scan.Reading(Action.Signal);
        long change = (((LiteralQuantity)Action.NoResponseChange).Value / Action.Signal.Resolution).ToInt64();
        Expression moved = Raises
            ? build.Subtract(reading, _reference.Current)
            : build.Subtract(_reference.Current, reading);
        return build.LessOrEqual(build.Constant(change), moved);
    }

    private Expression Fact(string name, Expression value) => _scan.System.Define($"{_name}.{name}", value, _origin);

    private static Expression Known(Expression? value) => value ?? throw new InvalidOperationException("the dose has not been measured yet");
}
