using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// The active steps and their clocks, evolving by the rules of IEC 60848: a transition is enabled when
/// all the steps before it are active; all enabled transitions whose condition surely holds are cleared
/// at once; a step both left and entered stays active and starts anew. Of the transitions that leave
/// one step the first written wins.
/// </summary>
internal sealed class Situation
{
    private readonly UnitScan _scan;
    private readonly Dictionary<int, StepState> _steps = [];
    private readonly Dictionary<int, Expression> _now = [];
    private readonly Dictionary<int, Expression> _activated = [];

    public Situation(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            _steps[step.Number] = new StepState(scan, step);
        }
    }

    public Expression AtStart(int step) => _steps[step].Active.Current;

    public Expression Now(int step) => _now[step];

    /// <summary>The step was entered in this scan, perhaps anew.</summary>
    public Expression Activated(int step) => _activated[step];

    /// <summary>Scans since the step was entered, before this one; 0 in the scan of its activation.</summary>
    public Expression Elapsed(int step) => _scan.Build.IfThenElse(
        _activated[step],
        _scan.Build.Constant(0),
        (_steps[step].Elapsed ?? throw new InvalidOperationException($"step {step} has no elapsed time")).Current);

    /// <summary>A step whose limit has passed while Running asks for this reaction.</summary>
    public Expression Ask(Reaction reaction) => _scan.Build.Or(_steps.Values
        .Where(state => state.Step.Limit.GoTo is null && state.Step.Limit.Reaction == reaction)
        .Select(Expired));

    public void Evolve()
    {
        ExpressionBuilder build = _scan.Build;
        Expression running = build.And(_scan.State.WasAtStart(ProceduralState.Running), _scan.RunningNow);
        Dictionary<int, List<Expression>> left = _steps.Keys.ToDictionary(step => step, _ => new List<Expression>());
        Dictionary<int, List<Expression>> entered = _steps.Keys.ToDictionary(step => step, _ => new List<Expression>());
        foreach (StepTransition transition in Transitions())
        {
            Expression enabled = build.And(transition.From.Select(AtStart).Append(running));
            Expression lost = build.Or(transition.From.SelectMany(step => left[step]));
            Expression cleared = _scan.System.Define(transition.Name, build.And(enabled, transition.Surely, build.Not(lost)), transition.Origin);
            foreach (int step in transition.From)
            {
                left[step].Add(cleared);
            }

            foreach (int step in transition.To)
            {
                entered[step].Add(cleared);
            }
        }

        entered[_scan.Unit.Steps[0].Number].Add(_scan.State.Started);
        Expression keeps = build.Not(build.Or(
            _scan.State.Started, _scan.State.IsNow(ProceduralState.Stopping), _scan.State.IsNow(ProceduralState.Aborting)));
        foreach (int step in _steps.Keys)
        {
            _activated[step] = build.Or(entered[step]);
            Expression stays = build.And(AtStart(step), keeps, build.Not(build.Or(left[step])));
            _now[step] = _scan.System.Define(_scan.StepNamed(step, "now"), build.Or(stays, _activated[step]), _steps[step].Origin);
        }
    }

    public Expression AnyNow => _scan.Build.Or(_now.Values);

    public void Finish()
    {
        foreach (StepState state in _steps.Values)
        {
            state.Finish(Now(state.Step.Number), Activated(state.Step.Number));
            string name = _scan.StepNamed(state.Step.Number, "limit");
            _scan.System.Alarm(name, state.Step.Limit.Message, Expired(state), new Origin(state.Step.Limit.Span));
        }
    }

    private Expression Expired(StepState state) =>
        _scan.Build.And(state.Active.Current, _scan.State.WasAtStart(ProceduralState.Running), state.LimitReached);

    private IEnumerable<StepTransition> Transitions()
    {
        foreach (OrderedTransition transition in TransitionOrder.Of(_scan.Unit))
        {
            // The clocks of a join count while its last written branch is in its final step.
            Step owner = _steps[transition.From[^1]].Step;
            string name = _scan.Named(transition.Name);
            Expression surely = transition.When is null
                ? _steps[owner.Number].LimitReached
                : ConditionLowering.Lower(_scan, transition.When, new ConditionPlace(name, step: owner)).Surely;
            yield return new StepTransition(name, [.. transition.From], [.. transition.To], surely, new Origin(transition.Span));
        }
    }

    private sealed record StepTransition(string Name, int[] From, int[] To, Expression Surely, Origin Origin);
}
