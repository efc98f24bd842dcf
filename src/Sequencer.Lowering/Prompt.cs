using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// A question of a step. It is asked from the entry of the step until it is answered, while Running; the
/// answer acts on the edge of the operator's input, counts from the scan after the question on, and is kept
/// until the step is entered again or a batch starts.
/// </summary>
internal sealed class Prompt
{
    private readonly UnitScan _scan;
    private readonly Step _step;
    private readonly PromptAction _action;
    private readonly Origin _origin;
    private readonly long _limit;
    private readonly Expression _input;
    private readonly DeclaredState _pressed;
    private readonly DeclaredState _asks;
    private readonly DeclaredState _answer;
    private readonly DeclaredState _clock;

    public Prompt(UnitScan scan, Step step, PromptAction action)
    {
        _scan = scan;
        _step = step;
        _action = action;
        _origin = new Origin(action.Span);
        _limit = action.Limit.Scans(scan.ScanMilliseconds);
        string name = scan.Named(action.Name);
        SystemBuilder system = scan.System;
        _input = system.Input($"{name}.input", new IntegerRange(int.MinValue, int.MaxValue));
        _pressed = system.State($"{name}.pressed", true, retained: false, StatePurpose.Control, _origin);
        _asks = system.State($"{name}.asks", false, retained: false, StatePurpose.Control, _origin);
        _answer = system.State($"{name}.answer", new IntegerRange(0, action.Answers.Length), 0, retained: true, StatePurpose.Control, _origin);
        _clock = system.State($"{name}.clock", new IntegerRange(0, _limit), 0, retained: true, StatePurpose.Control, _origin);
    }

    public string Name => _action.Name;

    /// <summary>It was answered so before this scan.</summary>
    public Expression Answered(int answer) => _scan.Build.Equal(_answer.Current, _scan.Build.Constant(answer));

    public Expression Ask(Reaction reaction) => reaction == _action.Reaction ? Late : _scan.Build.False;

    private Expression Late => _scan.Build.And(_asks.Current, _scan.Build.LessOrEqual(_scan.Build.Constant(_limit), _clock.Current));

    /// <summary>Once state and situation of the scan are known.</summary>
    public void Evolve()
    {
        ExpressionBuilder build = _scan.Build;
        Expression zero = build.Constant(0);
        Expression pressed = build.And(
            build.LessOrEqual(build.Constant(1), _input), build.LessOrEqual(_input, build.Constant(_action.Answers.Length)));
        Expression taken = build.And(_asks.Current, pressed, build.Not(_pressed.Current));
        Expression anew = build.Or(_scan.Activated(_step.Number), _scan.State.Started);
        Expression given = build.Maximum(zero, build.Minimum(_input, build.Constant(_action.Answers.Length)));
        Expression answer = build.IfThenElse(anew, zero, build.IfThenElse(taken, given, _answer.Current));
        Expression asks = build.And(_scan.StepNow(_step.Number), _scan.RunningNow, build.Equal(answer, zero));
        Expression counted = build.IfThenElse(build.Or(anew, _scan.State.RestartTaken), zero, _clock.Current);
        _pressed.Next = pressed;
        _answer.Next = answer;
        _asks.Next = asks;
        _clock.Next = build.IfThenElse(asks, Clocks.UpTo(build, counted, _limit), counted);
        _scan.System.Alarm(_scan.Named($"{_action.Name}.late"), _action.Message, Late, _origin);
    }
}
