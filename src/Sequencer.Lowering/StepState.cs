using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What is kept of one step: whether it is active, the clock of its limit (frozen outside the state that
/// the step works in; in a step of the batch begun anew by the first restart after it has run out), whether
/// it is passed over, and, where an action needs it, the time since its activation. A loss of power ends the
/// steps of a section: nothing of theirs is retained.
/// </summary>
internal sealed class StepState
{
    private readonly UnitScan _scan;
    private readonly DeclaredState _clock;
    private readonly DeclaredState? _rearmed;
    private readonly DeclaredState? _passedOver;
    private readonly long _limit;

    public StepState(UnitScan scan, Step step)
    {
        _scan = scan;
        Step = step;
        Origin = new Origin(step.Span);
        _limit = step.Limit.Time.Scans(scan.ScanMilliseconds);
        Active = Flag("active");
        _clock = Count("clock", _limit);
        _rearmed = step.IsOfBatch ? Flag("rearmed") : null;
        _passedOver = step.OnlyIf is null ? null : Flag("passed_over");
        PassedOverNow = PassedOverAtStart;
        long longest = LongestAction(step, scan.ScanMilliseconds);
        if (longest > 0)
        {
            Elapsed = Count("elapsed", longest);
        }
    }

    public Step Step { get; }

    public Origin Origin { get; }

    public DeclaredState Active { get; }

    /// <summary>The clock of the limit, as it is stored.</summary>
    public Expression StoredClock => _clock.Stored;

    /// <summary>The step was passed over when it was entered, before this scan.</summary>
    public Expression PassedOverAtStart => _passedOver?.Current ?? _scan.Build.False;

    /// <summary>As <see cref="PassedOverAtStart"/>, with this scan's entry.</summary>
    public Expression PassedOverNow { get; private set; }

    /// <summary>Scans since activation while the step works; null where no action asks.</summary>
    public DeclaredState? Elapsed { get; }

    /// <summary>As many scans as the limit allows have passed before this one.</summary>
    public Expression LimitReached => _scan.Build.LessOrEqual(_scan.Build.Constant(_limit), _clock.Current);

    /// <summary>Whether the step is done or passed over is judged in the scan of its activation.</summary>
    public void Judge(Expression activated)
    {
        if (Step.OnlyIf is null)
        {
            return;
        }

        string name = _scan.StepNamed(Step.Number, "only");
        Expression fits = ConditionLowering.Lower(_scan, Step.OnlyIf, new ConditionPlace(name)).Surely;
        PassedOverNow = _scan.System.Define(
            _scan.StepNamed(Step.Number, "passes_over"), _scan.Build.IfThenElse(activated, _scan.Build.Not(fits), PassedOverAtStart), Origin);
    }

    public void Finish(Expression now, Expression activated)
    {
        ExpressionBuilder build = _scan.Build;
        Expression zero = build.Constant(0);
        Expression counts = build.And(now, _scan.WorksNow(Step));
        Expression rearms = _rearmed is null
            ? build.False
            : build.And(_scan.State.RestartTaken, Active.Current, LimitReached, build.Not(_rearmed.Current));
        Active.Next = now;
        Expression limitClock = build.IfThenElse(build.Or(activated, rearms), zero, _clock.Current);
        _clock.Next = build.IfThenElse(counts, Clocks.UpTo(build, limitClock, _limit), limitClock);
        if (_rearmed is not null)
        {
            _rearmed.Next = build.And(build.Not(activated), build.Or(_rearmed.Current, rearms));
        }

        if (_passedOver is not null)
        {
            _passedOver.Next = PassedOverNow;
        }

        if (Elapsed is not null)
        {
            Expression elapsed = build.IfThenElse(activated, zero, Elapsed.Current);
            Elapsed.Next = build.IfThenElse(counts, Clocks.UpTo(build, elapsed, Elapsed.Variable.Range.Maximum), elapsed);
        }
    }

    private DeclaredState Flag(string name) =>
        _scan.System.State(_scan.StepNamed(Step.Number, name), false, retained: Step.IsOfBatch, StatePurpose.Control, Origin);

    private DeclaredState Count(string name, long most) => _scan.System.State(
        _scan.StepNamed(Step.Number, name), new IntegerRange(0, most), 0, retained: Step.IsOfBatch, StatePurpose.Control, Origin);

    private static long LongestAction(Step step, int scanMilliseconds) => step.Actions.OfType<DriveAction>()
        .Select(action => action.ScansFromActivation(scanMilliseconds))
        .DefaultIfEmpty(0)
        .Max();
}
