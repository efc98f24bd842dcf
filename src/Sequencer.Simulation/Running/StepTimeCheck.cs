using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>How long a step is active, each time that it is left.</summary>
internal sealed class StepTimeCheck : Check
{
    private readonly Expectation.StepLasts _expectation;
    private readonly StepPlace _step;
    private readonly List<(long From, long To)> _visits = [];
    private long? _entered;

    private StepTimeCheck(Expectation.StepLasts expectation, EventWatch? since, StepPlace step)
        : base(expectation, since)
    {
        _expectation = expectation;
        _step = step;
    }

    public static StepTimeCheck? Bind(Expectation.StepLasts expectation, EventWatch? since, ScenarioBinder binder) =>
        binder.Names.Step(expectation.Unit, expectation.Step, expectation.Span) is StepPlace step ? new StepTimeCheck(expectation, since, step) : null;

    protected override string Words()
    {
        string bounds = (_expectation.AtLeast, _expectation.AtMost) switch
        {
            (double low, double high) => $"{DurationWords.Of(low)} to {DurationWords.Of(high)}",
            (double low, null) => $"at least {DurationWords.Of(low)}",
            (null, double high) => $"at most {DurationWords.Of(high)}",
            _ => "any time",
        };
        return $"{_expectation.Unit} stays in step {_expectation.Step} {bounds}";
    }

    protected override void See(ClosedLoop loop)
    {
        bool active = loop.State(_step.Place) != 0;
        if (active)
        {
            _entered ??= loop.ScanNumber;
        }
        else if (_entered is long entered)
        {
            _visits.Add((entered, loop.ScanNumber));
            _entered = null;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop)
    {
        if (_visits.Count == 0)
        {
            return Judged(false, _entered is null ? "the step was never active" : "the step was not left", null);
        }

        string seen = string.Join(", ", _visits.Select(visit => DurationWords.Of(Seconds(visit))));
        foreach ((long From, long To) visit in _visits)
        {
            double seconds = Seconds(visit);
            if (seconds < _expectation.AtLeast || seconds > _expectation.AtMost)
            {
                return Judged(false, seen, visit.To);
            }
        }

        return Judged(true, seen, _visits[^1].To);

        double Seconds((long From, long To) visit) => loop.SecondsAt(visit.To) - loop.SecondsAt(visit.From);
    }
}
