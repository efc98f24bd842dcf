using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Records;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Simulation.Running;

/// <summary>Plays a scenario on a fresh closed loop.</summary>
public sealed class ScenarioRun
{
    /// <summary>About as many sampled rows as a run has, whatever its length.</summary>
    private const int SampledRows = 2880;

    /// <summary>Of a scan: a time that is written as a whole number of scans is that number, although no binary fraction is a tenth of a second.</summary>
    private const double WithinRounding = 1e-6;

    private readonly ClosedLoop _loop;
    private readonly Scenario _scenario;
    private readonly Hands _hands;
    private readonly List<(BoundDeed Deed, ScriptedAction Action)> _open = [];
    private readonly List<Check> _checks = [];
    private readonly List<Answering> _answering = [];
    private EventWatch? _until;
    private InputScript? _inputs;

    private ScenarioRun(ClosedLoop loop, Scenario scenario)
    {
        _loop = loop;
        _scenario = scenario;
        _hands = new Hands(loop);
    }

    /// <summary>Binds a scenario to a loop; null, with diagnostics, where a name or value does not fit the site.</summary>
    public static ScenarioRun? Bind(ClosedLoop loop, Scenario scenario, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        ScenarioRun run = new(loop, scenario);
        run.BindAll(new ScenarioBinder(loop, found));
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : run;
    }

    /// <summary>
    /// Plays the scenario to its end; <paramref name="progress"/> gets the simulated seconds now and
    /// then. Call it once: the loop is used up.
    /// </summary>
    public ScenarioResult Play(IProgress<double>? progress, CancellationToken cancellation)
    {
        RunRecorder recorder = new(_loop, SampleSeconds(_scenario.DurationSeconds));
        RunEnding ending = Play(recorder, progress, cancellation);
        return new ScenarioResult(_scenario, recorder.Finish(_scenario.Name), ending.Expectations, ending.Undone, ending.EndedByDuration);
    }

    /// <summary>As above, with a watch that keeps what it wants in place of the run record.</summary>
    internal RunEnding Play(IRunWatch watch, IProgress<double>? progress, CancellationToken cancellation)
    {
        long scans = Math.Max(1, (long)Math.Ceiling((_scenario.DurationSeconds * 1000 / _loop.System.ScanMilliseconds) - WithinRounding));
        if (_inputs is not null)
        {
            _loop.RunWithoutPlant(_inputs);
        }

        Check[] inEachScan = [.. _checks.Where(check => !check.IsAskedAtEnd)];
        bool ended = false;
        bool asked = false;
        for (long scan = 0; scan < scans && !ended; scan++)
        {
            if (scan % watch.SampleScans == 0)
            {
                cancellation.ThrowIfCancellationRequested();
                progress?.Report(_loop.Seconds);
            }

            _loop.Scan();
            watch.Observe();
            foreach (Check check in inEachScan)
            {
                check.Observe(_loop);
            }

            _until?.Observe(_loop);
            ended = _until?.HasCome ?? false;
            asked = ended || scan == scans - 1;
            if (asked)
            {
                AskAtEnd();
            }

            if (!ended)
            {
                Act(watch);
            }

            _loop.Advance();
            ended |= _loop.Plant.Failure is not null || watch.IsOver;
        }

        if (!asked)
        {
            AskAtEnd();
        }

        return new RunEnding(
            [.. _checks.Select(check => check.Result(_loop))],
            [.. _open.Select(open => new UndoneDeed(open.Deed.Words, open.Action.Span))],
            !ended && _until is not null,
            _until is { HasCome: true } ? _until.CameSeconds : null);
    }

    private void AskAtEnd()
    {
        foreach (Check check in _checks.Where(check => check.IsAskedAtEnd))
        {
            check.Observe(_loop);
        }
    }

    private static double SampleSeconds(double duration)
    {
        double wanted = duration / SampledRows;
        double[] steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60];
        return steps.FirstOrDefault(step => step >= wanted, wanted);
    }

    private void BindAll(ScenarioBinder binder)
    {
        foreach (ParameterSetting setting in _scenario.Settings)
        {
            if (binder.Names.OperatorInput(setting.Parameter, setting.Span) is { } input
                && binder.Names.Integer(input, setting.Value, setting.Span) is long value)
            {
                _loop.SetInput(input.Index, value);
            }
        }

        _inputs = InputScripts.Bind(_scenario, _loop, binder.Names);
        foreach (ScriptedAction action in _scenario.Actions)
        {
            if (binder.Bind(action) is BoundDeed deed)
            {
                _open.Add((deed, action));
            }
        }

        foreach (OperatorRule rule in _scenario.Operator)
        {
            if (binder.Bind(rule) is Answering answering)
            {
                _answering.Add(answering);
            }
        }

        foreach (Expectation expectation in _scenario.Expectations)
        {
            if (Check.Bind(expectation, binder, _loop) is Check check)
            {
                _checks.Add(check);
            }
        }

        _until = _scenario.Until is Moment until ? binder.Watch(until) : null;
    }

    private void Act(IRunWatch watch)
    {
        if (_hands.Release())
        {
            watch.Note(RunEventKind.PowerReturned, "power", "power returned");
        }

        int kept = 0;
        for (int index = 0; index < _open.Count; index++)
        {
            (BoundDeed deed, ScriptedAction action) = _open[index];
            deed.Watch.Observe(_loop);
            if (!deed.Watch.HasCome)
            {
                _open[kept++] = (deed, action);
                continue;
            }

            deed.Do(_hands);
            watch.Note(action.Deed is Deed.LosePower ? RunEventKind.PowerLost : RunEventKind.Action, "", deed.Words);
        }

        _open.RemoveRange(kept, _open.Count - kept);
        foreach (Answering answering in _answering)
        {
            if (answering.Observe(_hands))
            {
                watch.Note(RunEventKind.Action, "", answering.Words);
            }
        }
    }
}
