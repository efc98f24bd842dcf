using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// The procedural state of IEC 61512-1. Abort beats stop beats hold beats restart beats start; what is
/// asked for by faults counts like the operator's command. After a loss of power a unit that was in
/// progress is Held; one on its way to Stopped or Aborted is there. Where memory was changed from outside it aborts.
/// </summary>
internal sealed class StateMachine
{
    private static readonly ProceduralState[] MayAbort =
        [ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting, ProceduralState.Stopping, ProceduralState.Stopped];

    private static readonly ProceduralState[] MayStop =
        [ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting];

    private static readonly ProceduralState[] MayHold = [ProceduralState.Running, ProceduralState.Restarting];

    private static readonly ProceduralState[] MayReset = [ProceduralState.Complete, ProceduralState.Stopped, ProceduralState.Aborted];

    private const string CalibrationGoesOn = "Start refused: a reading is being calibrated";

    private readonly UnitScan _scan;
    private readonly DeclaredState _state;
    private readonly DeclaredState _restartClock;
    private readonly Expression _atStart;
    private readonly HeldLimit? _heldLimit;
    private readonly DeclaredState? _heldClock;
    private Expression? _now;
    private Expression? _started;
    private Expression? _restartTaken;

    public StateMachine(UnitScan scan)
    {
        _scan = scan;
        ExpressionBuilder build = scan.Build;
        Origin origin = new(scan.Unit.Span);
        _state = scan.System.State(scan.Named("state"), new IntegerRange(0, 9), 0, retained: true, StatePurpose.Control, origin);
        Expression inProgress = build.Or(
            Is(_state.Current, ProceduralState.Running), Is(_state.Current, ProceduralState.Holding), Is(_state.Current, ProceduralState.Restarting));
        Expression cameToRest = Choose(
            inProgress,
            ProceduralState.Held,
            Choose(
                Is(_state.Current, ProceduralState.Stopping),
                ProceduralState.Stopped,
                Choose(Is(_state.Current, ProceduralState.Aborting), ProceduralState.Aborted, _state.Current)));
        _atStart = build.IfThenElse(scan.Signals.FirstScan, cameToRest, _state.Current);
        _heldLimit = scan.Unit.HeldLimit;
        if (_heldLimit is not null)
        {
            IntegerRange held = new(0, Math.Max(1, _heldLimit.Time.Scans(scan.ScanMilliseconds)));
            _heldClock = scan.System.State(scan.Named("held_clock"), held, 0, retained: true, StatePurpose.Control, new Origin(_heldLimit.Span));
        }

        long wait = scan.Unit.RestartWait.Scans(scan.ScanMilliseconds);
        _restartClock = scan.System.State(scan.Named("restart_clock"), new IntegerRange(0, Math.Max(1, wait)), 0, retained: false, StatePurpose.Control, origin);
    }

    /// <summary>A start was taken in this scan.</summary>
    public Expression Started => Known(_started);

    /// <summary>A restart was taken in this scan.</summary>
    public Expression RestartTaken => Known(_restartTaken);

    /// <summary>The state as other units see it: as it was at the end of the last scan, before a loss of power too.</summary>
    public Expression WasShown(ProceduralState state) => Is(_state.Current, state);

    public Expression WasAtStart(ProceduralState state) => Is(_atStart, state);

    public Expression IsNow(ProceduralState state) => Is(Known(_now), state);

    /// <summary>What is kept of it from scan to scan.</summary>
    public DeclaredState Kept => _state;

    /// <summary>As it is stored, for facts about states alone.</summary>
    public Expression StoredIs(ProceduralState state) => Is(_state.Stored, state);

    /// <summary>The scans that the wait in Restarting lasts.</summary>
    public long RestartWait => _restartClock.Variable.Range.Maximum;

    /// <summary>The clock of the wait in Restarting, as it is stored.</summary>
    public Expression StoredRestartClock => _restartClock.Stored;

    /// <summary>The state at the end of the scan; known when the scan is finished.</summary>
    public Expression EndsIn(ProceduralState state) => Is(_state.Next, state);

    public void Resolve()
    {
        ExpressionBuilder build = _scan.Build;
        OperatorCommands commands = _scan.Commands;
        Expression emergency = Asked(Reaction.Emergency);
        Expression faultAborts = build.Or(emergency, Asked(Reaction.Abort));
        Expression faultStops = Asked(Reaction.Stop);
        Expression faultHolds = Asked(Reaction.Hold);
        Expression healthy = build.Not(build.Or(faultAborts, faultStops, faultHolds));
        Expression unopposed = build.Not(build.Or(commands.Abort, commands.Stop, commands.Hold));
        List<Expression> startConditions = StartConditions();
        _started = Fact("started", build.And(
            StartAsked(), unopposed, healthy, _scan.Settings.InRange, build.Not(_scan.Calibrations.Any), build.And(startConditions)));
        _restartTaken = Fact("restarted", build.And(
            WasAtStart(ProceduralState.Held), commands.Restart, unopposed, healthy));
        Expression next = Evolved();
        next = Choose(_started, ProceduralState.Running, next);
        next = Choose(_restartTaken, ProceduralState.Restarting, next);
        next = Choose(build.And(Any(MayReset), commands.Reset, build.Not(faultAborts)), ProceduralState.Idle, next);
        next = Choose(build.And(Any(MayHold), build.Or(commands.Hold, faultHolds)), ProceduralState.Holding, next);
        next = Choose(build.And(Any(MayStop), build.Or(commands.Stop, faultStops)), ProceduralState.Stopping, next);
        next = Choose(build.And(Any(MayAbort), build.Or(commands.Abort, faultAborts)), ProceduralState.Aborting, next);
        next = Choose(_scan.Watch.Differs, ProceduralState.Aborting, next);
        _now = _scan.System.Define(_scan.Named("state.now"), next, _state.Origin);

        // A start or restart that loses to hold, stop or abort in the same scan was not taken.
        _restartTaken = build.And(_restartTaken, IsNow(ProceduralState.Restarting));
        _started = build.And(_started, IsNow(ProceduralState.Running));
        Refusals(healthy, startConditions);
    }

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        Expression done = build.And(_scan.RunningNow, build.Not(_scan.Situation.AnyNow(ProceduralState.Running)));
        _state.Next = build.IfThenElse(done, Value(ProceduralState.Complete), Known(_now));
        _restartClock.Next = build.IfThenElse(
            IsNow(ProceduralState.Restarting),
            Clocks.UpTo(build, build.IfThenElse(RestartTaken, build.Constant(0), _restartClock.Current), _restartClock.Variable.Range.Maximum),
            build.Constant(0));
        if (_heldClock is not null && _heldLimit is not null)
        {
            Expression lasted = build.IfThenElse(WasAtStart(ProceduralState.Held), _heldClock.Current, build.Constant(0));
            _heldClock.Next = build.IfThenElse(
                IsNow(ProceduralState.Held), Clocks.UpTo(build, lasted, _heldClock.Variable.Range.Maximum), build.Constant(0));
            _scan.System.Alarm(_scan.Named("held.limit"), _heldLimit.Message, HeldTooLong(), new Origin(_heldLimit.Span));
        }
    }

    private Expression HeldTooLong() => _heldClock is null
        ? _scan.Build.False
        : _scan.Build.And(WasAtStart(ProceduralState.Held), _scan.Build.LessOrEqual(_scan.Build.Constant(_heldClock.Variable.Range.Maximum), _heldClock.Current));

    /// <summary>The transient states end by themselves when none of their steps is active any more, at once where they have none.</summary>
    private Expression Evolved()
    {
        ExpressionBuilder build = _scan.Build;
        Expression waited = build.LessOrEqual(build.Constant(_restartClock.Variable.Range.Maximum), _restartClock.Current);
        Expression next = _atStart;
        next = Choose(Finished(ProceduralState.Holding), ProceduralState.Held, next);
        next = Choose(build.And(Finished(ProceduralState.Restarting), waited), ProceduralState.Running, next);
        next = Choose(Finished(ProceduralState.Stopping), ProceduralState.Stopped, next);
        return Choose(Finished(ProceduralState.Aborting), ProceduralState.Aborted, next);
    }

    private Expression Finished(ProceduralState state) =>
        _scan.Build.And(WasAtStart(state), _scan.Build.Not(_scan.Situation.AnyAtStart(state)));

    private Expression Asked(Reaction reaction)
    {
        Expression devices = _scan.Build.Or(_scan.Unit.Outputs
            .Where(output => output.Confirmation?.Reaction == reaction)
            .Select(_scan.Discrepancies.Now));
        Expression asked = _scan.Build.Or(
            _scan.Trips.Ask(reaction),
            reaction == Reaction.Emergency ? _scan.Watch.Latched : _scan.Build.False,
            devices,
            _scan.Situation.Ask(reaction),
            _scan.Doses.Ask(reaction),
            _scan.Prompts.Ask(reaction),
            _scan.Claims.Ask(reaction),
            _heldLimit?.Reaction == reaction ? HeldTooLong() : _scan.Build.False,
            _scan.Finals.Ask(reaction),
            _scan.Assumptions.Ask(reaction));
        return Fact($"asks_{Word(reaction)}", asked);
    }

    private List<Expression> StartConditions() =>
    [
        .. _scan.Unit.StartConditions.Select((condition, index) => _scan.Build.Or(
            ConditionLowering.Lower(_scan, condition.Condition, new ConditionPlace(StartName(index))).Surely,
            _scan.Build.Not(_scan.Site.Forces.Of(StartName(index))))),
    ];

    private string StartName(int index) => _scan.Named(FormattableString.Invariant($"start{index + 1}"));

    private void Refusals(Expression healthy, List<Expression> startConditions)
    {
        ExpressionBuilder build = _scan.Build;
        Expression asked = StartAsked();
        _scan.System.Alarm(_scan.Named("start.setting"), "Start refused: a setting is out of its range", build.And(asked, build.Not(_scan.Settings.InRange)), _state.Origin);
        _scan.System.Alarm(_scan.Named("start.fault"), "Start refused: reset the trips first", build.And(asked, build.Not(healthy)), _state.Origin);
        if (!_scan.Unit.Calibrations.IsEmpty)
        {
            _scan.System.Alarm(
                _scan.Named("start.calibration"), CalibrationGoesOn, build.And(asked, _scan.Calibrations.Any), _state.Origin);
        }

        for (int index = 0; index < _scan.Unit.StartConditions.Length; index++)
        {
            StartCondition condition = _scan.Unit.StartConditions[index];
            _scan.System.Alarm(
                StartName(index), condition.Message, build.And(asked, build.Not(startConditions[index])), new Origin(condition.Span));
        }
    }

    /// <summary>By the operator, or by another unit, whose request needs no reset after a batch that is Complete.</summary>
    private Expression StartAsked()
    {
        ExpressionBuilder build = _scan.Build;
        Expression wanted = _scan.Requests.Wanted;
        return build.Or(
            build.And(WasAtStart(ProceduralState.Idle), build.Or(_scan.Commands.Start, wanted)),
            build.And(WasAtStart(ProceduralState.Complete), wanted));
    }

    private Expression Fact(string name, Expression value) => _scan.System.Define(_scan.Named(name), value, _state.Origin);

    private Expression Any(IEnumerable<ProceduralState> states) => _scan.Build.Or(states.Select(WasAtStart));

    private Expression Choose(Expression condition, ProceduralState state, Expression otherwise) =>
        _scan.Build.IfThenElse(condition, Value(state), otherwise);

    private Expression Value(ProceduralState state) => _scan.Build.Constant((long)state);

    private Expression Is(Expression value, ProceduralState state) => _scan.Build.Equal(value, Value(state));

    private static Expression Known(Expression? value) => value ?? throw new InvalidOperationException("the state of this scan is not resolved yet");

    private static string Word(Reaction reaction) => reaction switch
    {
        Reaction.Alarm => "alarm",
        Reaction.Hold => "hold",
        Reaction.Stop => "stop",
        Reaction.Abort => "abort",
        Reaction.Emergency => "emergency",
        _ => throw new System.Diagnostics.UnreachableException($"no word for {reaction}"),
    };
}
