using System.Collections.Immutable;
using Sequencer.Plant;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Running;

namespace Sequencer.Simulation.Trials;

/// <summary>Sees a run of a set and keeps its summary, no record.</summary>
internal sealed class TrialWatch : IRunWatch
{
    /// <summary>Extremes are looked for so often, in seconds of the run.</summary>
    private const double ExtremesEvery = 1.0;

    /// <summary>Litres that rounding may leave on a total that nothing was added to.</summary>
    private const double Nothing = 1e-6;

    private readonly ClosedLoop _loop;
    private readonly TrialMeasures _measures;
    private readonly ImmutableHashSet<string> _ordinary;
    private readonly double _from;
    private readonly int _awaited;
    private readonly long[] _raised;
    private readonly UnitState[] _states;
    private readonly int[] _batches;
    private readonly ValueSource[] _values;
    private readonly ValueSource[] _rims;
    private readonly ValueSource[] _leaks;
    private readonly (DoseLimit Limit, double Litres, ValueSource[] Passed, int Unit)[] _doses;
    private readonly double[] _kept;
    private readonly bool _hasExtremes;
    private readonly long _extremeScans;
    private Happening? _alarm;
    private Happening? _reaction;
    private Happening? _broken;
    private int _reacting = -1;
    private double _rest = double.NaN;
    private double _restSince = double.PositiveInfinity;

    /// <param name="loop">what runs</param>
    /// <param name="measures">what is kept</param>
    /// <param name="ordinary">alarms that the run without a fault raises too</param>
    /// <param name="awaited">the unit that the scenario waits for; null where it waits for no unit</param>
    /// <param name="from">when the fault comes, in seconds; alarms and reactions before it are not its doing</param>
    public TrialWatch(ClosedLoop loop, TrialMeasures measures, ImmutableHashSet<string> ordinary, string? awaited, double from)
    {
        _loop = loop;
        _measures = measures;
        _ordinary = ordinary;
        _from = from;
        _awaited = awaited is null ? -1 : Unit(awaited);
        _raised = new long[loop.System.Alarms.Length];
        _states = new UnitState[loop.Units.Length];
        _batches = new int[loop.Units.Length];
        _values = [.. measures.Values.Select(value => Needed(value.Name))];
        _rims = [.. measures.Rims.Select(Needed)];
        _leaks = [.. measures.Leaks.Select(Needed)];
        _doses = [.. measures.Doses.Select(limit => (limit, Litres(limit), limit.Passed.Select(Needed).ToArray(), Unit(limit.Unit)))];
        _kept = new double[_values.Length];
        Array.Fill(_kept, double.NaN);
        _hasExtremes = measures.Values.Any(value => value.Taken != TakenAs.AtEnd);
        _extremeScans = Math.Max(1, (long)(ExtremesEvery * 1000 / loop.System.ScanMilliseconds));
        SampleScans = 600 * _extremeScans;
    }

    public long SampleScans { get; }

    /// <summary>The unit that the scenario waits for (any, where it waits for none) has been at rest for so long that only a person could go on.</summary>
    public bool IsOver { get; private set; }

    public void Observe()
    {
        bool counts = _loop.Seconds >= _from;
        IsOver = counts && _loop.Seconds - Math.Max(_restSince, _from) >= _measures.AfterRestSeconds;
        ObserveAlarms(counts);
        ObserveStates(counts);
        if (_broken is null && _loop.Powered)
        {
            ObserveRequirements();
        }

        if (_hasExtremes && _loop.ScanNumber % _extremeScans == 0)
        {
            ObserveExtremes();
        }
    }

    public void Note(RunEventKind kind, string subject, string words)
    {
    }

    public RunSummary Finish(RunEnding ending)
    {
        for (int index = 0; index < _values.Length; index++)
        {
            _kept[index] = _measures.Values[index].Taken == TakenAs.AtEnd ? _loop.Value(_values[index]) : _kept[index];
        }

        // Drawn first: balances that do not close are a failure too.
        PlantBalances balances = _loop.Plant.Balances();
        return new RunSummary(
            _loop.Plant.Failure is not null ? RunEndKind.ModelStopped : ending.UntilSeconds is not null ? RunEndKind.Came : IsOver ? RunEndKind.AtRest : RunEndKind.TimeOver,
            _loop.Seconds,
            ending.UntilSeconds ?? double.NaN,
            [.. _kept],
            [.. _rims.Select(_loop.Value).Select(litres => litres > Nothing ? litres : 0.0)],
            _leaks.Sum(_loop.Value),
            [.. ending.Expectations.Select(expectation => expectation.Passed)],
            _alarm,
            _reaction,
            _rest,
            _broken,
            Overdosed(),
            string.Join(", ", _loop.Units.Select((unit, index) => $"{unit.Name} {_states[index]}")),
            _states.Any(IsRest),
            _loop.Site.Prompts.FirstOrDefault(IsAsked)?.Name ?? "",
            balances.Worst,
            _loop.Plant.Failure?.ToString() ?? "");
    }

    private static bool IsRest(UnitState state) => state is UnitState.Held or UnitState.Stopped or UnitState.Aborted;

    private bool IsAsked(PromptMetadata prompt) => _loop.Find(prompt.Asks) is ValueSource asks && _loop.Value(asks) != 0;

    private void ObserveAlarms(bool counts)
    {
        ReadOnlySpan<long> alarms = _loop.Alarms;
        if (alarms.SequenceEqual(_raised))
        {
            return;
        }

        for (int index = 0; index < _raised.Length && counts && _alarm is null; index++)
        {
            if (alarms[index] != 0 && _raised[index] == 0 && !_ordinary.Contains(_loop.System.Alarms[index].Name))
            {
                _alarm = new Happening(_loop.System.Alarms[index].Name, _loop.Seconds);
            }
        }

        alarms.CopyTo(_raised);
    }

    private void ObserveStates(bool counts)
    {
        for (int index = 0; index < _states.Length; index++)
        {
            UnitState now = (UnitState)_loop.State(_loop.Units[index].StatePlace);
            UnitState before = _states[index];
            if (now == before)
            {
                continue;
            }

            _states[index] = now;
            if (index == _awaited || _awaited < 0)
            {
                _restSince = !(_awaited < 0 ? _states.Any(IsRest) : IsRest(now)) ? double.PositiveInfinity : double.IsPositiveInfinity(_restSince) ? _loop.Seconds : _restSince;
            }
            _batches[index] += now == UnitState.Running && before is not (UnitState.Restarting or UnitState.Held or UnitState.Holding) ? 1 : 0;
            if (counts && _reaction is null && Reaction(now) is string word)
            {
                _reaction = new Happening($"{_loop.Units[index].Name} {word}", _loop.Seconds);
                _reacting = index;
            }

            if (index == _reacting && double.IsNaN(_rest) && IsRest(now))
            {
                _rest = _loop.Seconds;
            }
        }
    }

    private static string? Reaction(UnitState state) => state switch
    {
        UnitState.Holding or UnitState.Held => "held",
        UnitState.Stopping or UnitState.Stopped => "stopped",
        UnitState.Aborting or UnitState.Aborted => "aborted",
        _ => null,
    };

    private void ObserveRequirements()
    {
        int broken = _loop.Requirements.IndexOf(0);
        if (broken >= 0)
        {
            _broken = new Happening(_loop.System.Requirements[broken].Name, _loop.Seconds);
        }
    }

    private void ObserveExtremes()
    {
        for (int index = 0; index < _values.Length; index++)
        {
            TakenAs taken = _measures.Values[index].Taken;
            if (taken != TakenAs.AtEnd && _loop.Value(_values[index]) is double now && double.IsFinite(now))
            {
                _kept[index] = double.IsNaN(_kept[index]) ? now : taken == TakenAs.Highest ? Math.Max(_kept[index], now) : Math.Min(_kept[index], now);
            }
        }
    }

    private Overdose? Overdosed()
    {
        Overdose? most = null;
        foreach ((DoseLimit limit, double litres, ValueSource[] passed, int unit) in _doses)
        {
            double beyond = passed.Sum(_loop.Value) - (litres * Math.Max(1, unit < 0 ? 1 : _batches[unit]));
            if (beyond > Nothing && beyond > (most?.Litres ?? 0))
            {
                most = new Overdose(limit.Output, beyond);
            }
        }

        return most;
    }

    private double Litres(DoseLimit limit) =>
        limit.Parameter is string tag && _loop.Find(tag + ".setting") is ValueSource setting
        && _loop.Site.Convert((decimal)_loop.Value(setting), setting.Unit, "L") is decimal litres
            ? (double)litres
            : limit.Litres;

    private int Unit(string name) => Enumerable.Range(0, _loop.Units.Length).FirstOrDefault(index => _loop.Units[index].Name == name, -1);

    private ValueSource Needed(string name) => _loop.Find(name) ?? throw new InvalidOperationException($"the loop has no value {name}, which was looked for before");
}
