using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>Steps entered in an order; others may come between.</summary>
internal sealed class VisitCheck : Check
{
    private readonly Expectation.StepsVisited _expectation;
    private readonly StepPlace[] _steps;
    private int _next;
    private long? _last;

    private VisitCheck(Expectation.StepsVisited expectation, EventWatch? since, StepPlace[] steps)
        : base(expectation, since)
    {
        _expectation = expectation;
        _steps = steps;
    }

    public static VisitCheck? Bind(Expectation.StepsVisited expectation, EventWatch? since, ScenarioBinder binder)
    {
        List<StepPlace> steps = [];
        foreach (string step in expectation.Steps)
        {
            if (binder.Names.Step(expectation.Unit, step, expectation.Span) is StepPlace place)
            {
                steps.Add(place);
            }
        }

        return steps.Count == expectation.Steps.Length ? new VisitCheck(expectation, since, [.. steps]) : null;
    }

    protected override string Words() => $"{_expectation.Unit} passes steps {string.Join(", ", _expectation.Steps)}";

    protected override void See(ClosedLoop loop)
    {
        if (_next < _steps.Length && loop.State(_steps[_next].Place) != 0)
        {
            _next++;
            _last = loop.ScanNumber;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop) => _next == _steps.Length
        ? Judged(true, "passed in this order", _last)
        : Judged(false, _next == 0 ? $"step {_steps[0].Step} was never active" : $"step {_steps[_next].Step} was not active after step {_steps[_next - 1].Step}", _last);
}
