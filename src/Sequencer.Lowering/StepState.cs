using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What is kept of one step: whether it is active, the clock of its limit (frozen outside Running; begun
/// anew by the first restart after it has run out), and, where an action needs it, the time since its
/// activation.
/// </summary>
internal sealed class StepState
{
    private readonly UnitScan _scan;
    private readonly DeclaredState _clock;
    private readonly DeclaredState _rearmed;
    private readonly long _limit;

    public StepState(UnitScan scan, Step step)
    {
        _scan = scan;
        Step = step;
        Origin = new Origin(step.Span);
        _limit = step.Limit.Time.Scans(scan.ScanMilliseconds);
        Active = scan.System.State(scan.StepNamed(step.Number, "active"), false, retained: true, StatePurpose.Control, Origin);
        _clock = scan.System.State(scan.StepNamed(step.Number, "clock"), new IntegerRange(0, _limit), 0, retained: true, StatePurpose.Control, Origin);
        _rearmed = scan.System.State(scan.StepNamed(step.Number, "rearmed"), false, retained: true, StatePurpose.Control, Origin);
        long longest = LongestAction(step, scan.ScanMilliseconds);
        if (longest > 0)
        {
            Elapsed = scan.System.State(scan.StepNamed(step.Number, "elapsed"), new IntegerRange(0, longest), 0, retained: true, StatePurpose.Control, Origin);
        }
    }

    public Step Step { get; }

    public Origin Origin { get; }

    public DeclaredState Active { get; }

    /// <summary>Scans since activation while Running; null where no action asks.</summary>
    public DeclaredState? Elapsed { get; }

    /// <summary>As many scans as the limit allows have passed before this one.</summary>
    public Expression LimitReached => _scan.Build.LessOrEqual(_scan.Build.Constant(_limit), _clock.Current);

    public void Finish(Expression now, Expression activated)
    {
        ExpressionBuilder build = _scan.Build;
        Expression zero = build.Constant(0);
        Expression counts = build.And(now, _scan.RunningNow);
        Expression rearms = build.And(
            _scan.State.RestartTaken, Active.Current, LimitReached, build.Not(_rearmed.Current));
        Active.Next = now;
        Expression limitClock = build.IfThenElse(build.Or(activated, rearms), zero, _clock.Current);
        _clock.Next = build.IfThenElse(counts, Clocks.UpTo(build, limitClock, _limit), limitClock);
        _rearmed.Next = build.And(build.Not(activated), build.Or(_rearmed.Current, rearms));
        if (Elapsed is not null)
        {
            Expression elapsed = build.IfThenElse(activated, zero, Elapsed.Current);
            Elapsed.Next = build.IfThenElse(counts, Clocks.UpTo(build, elapsed, Elapsed.Variable.Range.Maximum), elapsed);
        }
    }

    private static long LongestAction(Step step, int scanMilliseconds) => step.Actions.OfType<DriveAction>()
        .Select(action => action.ScansFromActivation(scanMilliseconds))
        .DefaultIfEmpty(0)
        .Max();
}
