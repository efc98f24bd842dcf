using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Running;

/// <summary>A unit's state when the run ends, or reached before a time.</summary>
internal sealed class StateCheck : Check
{
    private readonly UnitPlaces _unit;
    private readonly UnitState _state;
    private readonly double? _latestSeconds;
    private long? _reached;

    private StateCheck(Expectation expectation, EventWatch? since, UnitPlaces unit, UnitState state, double? latestSeconds)
        : base(expectation, since)
    {
        _unit = unit;
        _state = state;
        _latestSeconds = latestSeconds;
    }

    public static StateCheck? Bind(Expectation expectation, EventWatch? since, ScenarioBinder binder) => expectation switch
    {
        Expectation.FinalState final when binder.Names.Unit(final.Unit, final.Span) is UnitPlaces unit =>
            new StateCheck(expectation, since, unit, final.State, null),
        Expectation.StateBefore before when binder.Names.Unit(before.Unit, before.Span) is UnitPlaces unit =>
            new StateCheck(expectation, since, unit, before.State, before.Seconds),
        _ => null,
    };

    protected override string Words() => _latestSeconds is double latest
        ? $"{_unit.Name} is {_state} before {DurationWords.Of(latest)}"
        : $"{_unit.Name} is {_state} at the end";

    protected override void See(ClosedLoop loop)
    {
        if (_reached is null && loop.State(_unit.StatePlace) == (long)_state)
        {
            _reached = loop.ScanNumber;
        }
    }

    protected override ExpectationResult Judge(ClosedLoop loop)
    {
        UnitState last = (UnitState)loop.State(_unit.StatePlace);
        if (_latestSeconds is not double latest)
        {
            return Judged(last == _state, $"{last} at the end", null);
        }

        return _reached is long scan
            ? Judged(loop.SecondsAt(scan) < latest, $"{_state} at {DurationWords.Clock(loop.SecondsAt(scan))}", scan)
            : Judged(false, $"never {_state}; {last} at the end", null);
    }
}
