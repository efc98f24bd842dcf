using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;

namespace Sequencer.Simulation.Records;

/// <summary>Watches a loop scan by scan and makes the run record.</summary>
internal sealed class RunRecorder : IRunWatch
{
    /// <summary>Rows for changes between two sampling times; more than these are merged.</summary>
    private const int MostChangeRows = 8;

    /// <summary>An alarm that comes and goes in every scan must not fill the memory.</summary>
    private const int MostEvents = 20_000;

    private readonly ClosedLoop _loop;
    private readonly RecordColumns _columns;
    private readonly UnitTracker[] _units;
    private readonly OutputTracker[] _outputs;
    private readonly long[] _outputValues;
    private readonly BatchTracker[] _batches;
    private readonly WatchedPlaces _followed;
    private readonly long[] _alarms;
    private readonly RecordTable _table;
    private readonly double[] _row;
    private readonly long _sampleScans;
    private readonly ImmutableArray<RunSetting> _settings;
    private readonly List<RunEvent> _events = [];
    private long _scans;
    private long _dropped;
    private long _merged;
    private int _changeRows;

    /// <param name="loop">What is watched.</param>
    /// <param name="sampleSeconds">The time between two rows while nothing but measurements change.</param>
    public RunRecorder(ClosedLoop loop, double sampleSeconds)
    {
        _loop = loop;
        _units = [.. loop.Units.Select(unit => new UnitTracker(unit))];
        _batches = [.. loop.Units.Select(unit => new BatchTracker(unit, loop))];
        _followed = new WatchedPlaces([.. _units.SelectMany(unit => unit.Watched), .. _batches.SelectMany(batch => batch.Watched)]);
        _outputs =
        [
            .. loop.System.Outputs.Select((output, index) => (output, index)).Where(pair => pair.output.Value.Sort == Sort.Boolean)
                .Select(pair => new OutputTracker(pair.output.Name, pair.index)),
        ];
        _outputValues = new long[loop.System.Outputs.Length];
        _settings = [.. SettingsOf(loop)];
        _alarms = new long[loop.System.Alarms.Length];
        _columns = new RecordColumns(loop, _units, _outputs);
        _row = new double[_columns.Count];
        _table = new RecordTable(_columns.Count);
        _sampleScans = Math.Max(1, (long)Math.Round(sampleSeconds * 1000 / loop.System.ScanMilliseconds));
    }

    public long SampleScans => _sampleScans;

    public bool IsOver => false;

    public IReadOnlyList<UnitTracker> Units => _units;

    /// <summary>Between the loop's scan and its advance.</summary>
    public void Observe()
    {
        bool changed = false;
        if (_followed.HaveChanged(_loop))
        {
            foreach (UnitTracker unit in _units)
            {
                changed |= unit.Observe(_loop);
            }

            Array.ForEach(_batches, batch => batch.Observe(_loop));
        }

        ReadOnlySpan<long> outputs = _loop.Values(ValueOrigin.Output);
        if (!outputs.SequenceEqual(_outputValues))
        {
            outputs.CopyTo(_outputValues);
            foreach (OutputTracker output in _outputs)
            {
                changed |= output.Observe(_loop);
            }
        }

        changed |= _columns.SwitchesChanged();
        ObserveAlarms();
        _scans = _loop.ScanNumber + 1;
        if (_loop.ScanNumber % _sampleScans == 0)
        {
            _changeRows = 0;
            AddRow();
        }
        else if (changed)
        {
            AddChange();
        }
    }

    public void Note(RunEventKind kind, string subject, string words)
    {
        if (_events.Count < MostEvents)
        {
            _events.Add(new RunEvent(_loop.ScanNumber, kind, subject, words));
        }
        else
        {
            _dropped++;
        }
    }

    public RunRecord Finish(string name)
    {
        if (_table.Rows == 0 || _table.Scan(_table.Rows - 1) != _scans - 1)
        {
            AddRow(_scans - 1);
        }

        foreach (UnitTracker unit in _units)
        {
            unit.Finish();
        }

        // Drawn first: balances that do not close are a failure too.
        PlantBalances balances = _loop.Plant.Balances();
        return new RunRecord(name, _loop.System.ScanMilliseconds, _scans, _columns.Describe(), _table)
        {
            Settings = _settings,
            Events = [.. _events],
            Steps = [.. _units.SelectMany(unit => unit.Steps.OrderBy(visit => visit.FromScan))],
            States = [.. _units.SelectMany(unit => unit.States)],
            Outputs = [.. _outputs.Select(output => output.Finish(_scans))],
            Batches = [.. _batches.SelectMany(batch => batch.Finish(_loop))],
            Balances = balances,
            Ledger = _loop.Plant.Ledger(),
            Failure = _loop.Plant.Failure,
            MergedChanges = _merged,
            DroppedEvents = _dropped,
        };
    }

    private static IEnumerable<RunSetting> SettingsOf(ClosedLoop loop)
    {
        foreach (SignalMetadata parameter in loop.Site.Signals.Where(signal => signal.Kind == SignalKind.Parameter))
        {
            if (loop.Find(parameter.Tag + ".setting") is ValueSource setting)
            {
                yield return new RunSetting(parameter.Tag, loop.Value(setting), setting.Decimals, setting.Unit, parameter.Description);
            }
        }
    }

    private void AddChange()
    {
        if (_changeRows >= MostChangeRows)
        {
            _merged++;
            return;
        }

        _changeRows++;
        AddRow();
    }

    private void AddRow() => AddRow(_loop.ScanNumber);

    private void AddRow(long scan)
    {
        _columns.Fill(_row);
        _loop.Plant.MeterSolids();
        _table.Add(scan, _row);
    }

    private void ObserveAlarms()
    {
        ReadOnlySpan<long> alarms = _loop.Alarms;
        if (alarms.SequenceEqual(_alarms))
        {
            return;
        }

        for (int index = 0; index < _alarms.Length; index++)
        {
            if (alarms[index] != _alarms[index])
            {
                Alarm alarm = _loop.System.Alarms[index];
                Note(alarms[index] != 0 ? RunEventKind.AlarmRaised : RunEventKind.AlarmCleared, alarm.Name, alarm.Message);
            }
        }

        alarms.CopyTo(_alarms);
    }
}
