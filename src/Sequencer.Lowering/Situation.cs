using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// The active steps and their clocks, evolving by the rules of IEC 60848: a transition is enabled when
/// all the steps before it are active; all enabled transitions whose condition surely holds are cleared
/// at once; a step both left and entered stays active and starts anew. Of the transitions that leave
/// one step the first written wins. The steps of a section are active only in their state, beside those of
/// the batch, which wait.
/// </summary>
internal sealed class Situation
{
    private readonly UnitScan _scan;
    private readonly Dictionary<int, StepState> _steps = [];
    private readonly Dictionary<string, DeclaredState> _counts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Expression> _conditions = new(StringComparer.Ordinal);
    private readonly IReadOnlyList<OrderedTransition> _transitions;
    private readonly Dictionary<int, Expression> _now = [];
    private readonly Dictionary<int, Expression> _activated = [];
    private readonly List<(OrderedTransition Transition, Expression Cleared)> _cleared = [];

    public Situation(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            _steps[step.Number] = new StepState(scan, step);
        }

        _transitions = TransitionOrder.Of(scan.Unit);
        foreach (OrderedTransition transition in _transitions)
        {
            if (transition.AtMost is { } most)
            {
                string name = scan.Named($"{transition.Name}.count");
                _counts[transition.Name] = scan.System.State(name, new IntegerRange(0, most.Most), 0, retained: true, StatePurpose.Control, new Origin(most.Span));
            }
        }
    }

    /// <summary>Each transition with whether it is cleared in this scan.</summary>
    public IReadOnlyList<(OrderedTransition Transition, Expression Cleared)> Cleared => _cleared;

    /// <summary>Whether the step is active and what its limit's clock says, as they are stored.</summary>
    public (Expression Active, Expression Clock) Stored(int step) => (_steps[step].Active.Stored, _steps[step].StoredClock);

    /// <summary>Whether the step is active, as it is kept from scan to scan.</summary>
    public DeclaredState Kept(int step) => _steps[step].Active;

    public Expression AtStart(int step) => _steps[step].Active.Current;

    public Expression Now(int step) => _now[step];

    /// <summary>The step was entered in this scan, perhaps anew.</summary>
    public Expression Activated(int step) => _activated[step];

    /// <summary>Scans since the step was entered, before this one; 0 in the scan of its activation.</summary>
    public Expression Elapsed(int step) => _scan.Build.IfThenElse(
        _activated[step],
        _scan.Build.Constant(0),
        (_steps[step].Elapsed ?? throw new InvalidOperationException($"step {step} has no elapsed time")).Current);

    /// <summary>The step was passed over when it was entered, before this scan.</summary>
    public Expression PassedOverAtStart(int step) => _steps[step].PassedOverAtStart;

    /// <summary>The step, entered in this scan or before, is passed over: it does nothing.</summary>
    public Expression PassedOverNow(int step) => _steps[step].PassedOverNow;

    /// <summary>A step whose limit has passed while Running asks for this reaction.</summary>
    public Expression Ask(Reaction reaction) => _scan.Build.Or(
    [
        .. _steps.Values.Where(state => state.Step.Limit.GoTo is null && state.Step.Limit.Reaction == reaction).Select(Expired),
        .. _transitions.Where(transition => transition.AtMost?.Reaction == reaction).Select(TakenTooOften),
    ]);

    public void Evolve()
    {
        ExpressionBuilder build = _scan.Build;
        Dictionary<int, List<Expression>> left = _steps.Keys.ToDictionary(step => step, _ => new List<Expression>());
        Dictionary<int, List<Expression>> entered = _steps.Keys.ToDictionary(step => step, _ => new List<Expression>());
        foreach (StepTransition transition in Transitions())
        {
            ProceduralState state = _steps[transition.From[0]].Step.State;
            Expression works = build.And(_scan.State.WasAtStart(state), _scan.State.IsNow(state));
            Expression enabled = build.And(transition.From.Select(AtStart).Append(works));
            Expression lost = build.Or(transition.From.SelectMany(step => left[step]));
            Expression cleared = _scan.System.Define(transition.Name, build.And(enabled, transition.Surely, build.Not(lost)), transition.Origin);
            _cleared.Add((transition.Ordered, cleared));
            Count(transition, cleared);
            foreach (int step in transition.From)
            {
                left[step].Add(cleared);
            }

            foreach (int step in transition.To)
            {
                entered[step].Add(cleared);
            }
        }

        foreach (Step step in _scan.Unit.Steps)
        {
            if (step.RestartAt is { } point)
            {
                Expression goesBack = build.And(_scan.State.RestartTaken, AtStart(step.Number));
                left[step.Number].Add(goesBack);
                entered[point.Step].Add(goesBack);
            }
        }

        foreach (ProceduralState state in _scan.Unit.StatesWithSteps)
        {
            entered[_scan.Unit.FirstStep(state).Number].Add(Begins(state));
        }

        foreach ((int step, StepState kept) in _steps)
        {
            _activated[step] = build.Or(entered[step]);
            Expression stays = build.And(AtStart(step), Keeps(kept.Step.State), build.Not(build.Or(left[step])));
            _now[step] = _scan.System.Define(_scan.StepNamed(step, "now"), build.Or(stays, _activated[step]), kept.Origin);
            kept.Judge(_activated[step]);
        }
    }

    /// <summary>Some step that works in the state is active after the transitions of this scan.</summary>
    public Expression AnyNow(ProceduralState state) => _scan.Build.Or(Of(state).Select(step => _now[step.Number]));

    /// <summary>As <see cref="AnyNow"/>, at the start of the scan.</summary>
    public Expression AnyAtStart(ProceduralState state) => _scan.Build.Or(Of(state).Select(step => AtStart(step.Number)));

    public void Finish()
    {
        foreach (StepState state in _steps.Values)
        {
            state.Finish(Now(state.Step.Number), Activated(state.Step.Number));
            string name = _scan.StepNamed(state.Step.Number, "limit");
            _scan.System.Alarm(name, state.Step.Limit.Message, Expired(state), new Origin(state.Step.Limit.Span));
        }
    }

    private IEnumerable<Step> Of(ProceduralState state) => _scan.Unit.Steps.Where(step => step.State == state);

    /// <summary>A batch begins with a start, a section whenever its state is entered.</summary>
    private Expression Begins(ProceduralState state) => state == ProceduralState.Running
        ? _scan.State.Started
        : _scan.Build.And(_scan.State.IsNow(state), _scan.Build.Not(_scan.State.WasAtStart(state)));

    /// <summary>Steps of the batch wait while the unit is held; those of a section end with its state.</summary>
    private Expression Keeps(ProceduralState state) => state == ProceduralState.Running
        ? _scan.Build.Not(_scan.Build.Or(
            _scan.State.Started, _scan.State.IsNow(ProceduralState.Stopping), _scan.State.IsNow(ProceduralState.Aborting)))
        : _scan.State.IsNow(state);

    private Expression Expired(StepState state) =>
        _scan.Build.And(state.Active.Current, _scan.State.WasAtStart(state.Step.State), state.LimitReached);

    /// <summary>All its turns are taken, it is wanted once more, and no way written above is.</summary>
    private Expression TakenTooOften(OrderedTransition transition)
    {
        ExpressionBuilder build = _scan.Build;
        IEnumerable<Expression> above = _transitions.TakeWhile(earlier => earlier != transition)
            .Where(earlier => earlier.From.Any(step => transition.From.Contains(step)))
            .Select(earlier => build.And([.. earlier.From.Select(AtStart), Condition(earlier), Allowed(earlier)]));
        return build.And(
        [
            .. transition.From.Select(AtStart),
            _scan.State.WasAtStart(ProceduralState.Running),
            Condition(transition),
            build.Not(Allowed(transition)),
            build.Not(build.Or(above)),
        ]);
    }

    private Expression Allowed(OrderedTransition transition) => transition.AtMost is { } most
        ? _scan.Build.Less(_counts[transition.Name].Current, _scan.Build.Constant(most.Most))
        : _scan.Build.True;

    /// <summary>A restart after the last turn grants one more.</summary>
    private void Count(StepTransition transition, Expression cleared)
    {
        if (transition.Ordered.AtMost is not { } most)
        {
            return;
        }

        ExpressionBuilder build = _scan.Build;
        DeclaredState count = _counts[transition.Ordered.Name];
        Expression grants = build.And([_scan.State.RestartTaken, .. transition.From.Select(AtStart), build.Not(Allowed(transition.Ordered))]);
        Expression kept = build.IfThenElse(grants, build.Constant(most.Most - 1), count.Current);
        count.Next = build.IfThenElse(
            _scan.State.Started, build.Constant(0), build.IfThenElse(cleared, Clocks.UpTo(build, count.Current, most.Most), kept));
        _scan.System.Alarm($"{transition.Name}.over", most.Message, TakenTooOften(transition.Ordered), new Origin(most.Span));
    }

    /// <summary>Lowered once, when it is first asked for.</summary>
    private Expression Condition(OrderedTransition transition)
    {
        if (_conditions.TryGetValue(transition.Name, out Expression? known))
        {
            return known;
        }

        // The clocks of a join count while its last written branch is in its final step.
        Step owner = _steps[transition.From[^1]].Step;
        Expression surely = transition.When is null
            ? _steps[owner.Number].LimitReached
            : _scan.Build.Or(
                _steps[owner.Number].PassedOverAtStart,
                ConditionLowering.Lower(_scan, transition.When, new ConditionPlace(_scan.Named(transition.Name), step: owner)).Surely);
        if (transition.When is not null && owner.IsOfBatch)
        {
            surely = _scan.Build.And(surely, _scan.Commands.Advances);
        }

        IEnumerable<Expression> granted = transition.From.Select(step => _scan.Claims.LeadsOn(_steps[step].Step));
        return _conditions[transition.Name] = _scan.Build.And(granted.Prepend(surely));
    }

    private IEnumerable<StepTransition> Transitions()
    {
        foreach (OrderedTransition transition in _transitions)
        {
            Expression surely = _scan.Build.And(Condition(transition), Allowed(transition));
            yield return new StepTransition(transition, _scan.Named(transition.Name), [.. transition.From], [.. transition.To], surely, new Origin(transition.Span));
        }
    }

    private sealed record StepTransition(OrderedTransition Ordered, string Name, int[] From, int[] To, Expression Surely, Origin Origin);
}
