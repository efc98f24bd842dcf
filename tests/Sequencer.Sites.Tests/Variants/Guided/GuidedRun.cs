using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Traces;

namespace Sequencer.Sites.Tests.Variants.Guided;

/// <summary>
/// Random runs of a system that go where few went before, with all its requirements watched in each scan: a judge of the prover
/// that shares nothing with it but the system. A run is in episodes, each of which begins at the start or at a state that an earlier one
/// reached. A scan in which an assumption is broken does not count: it is tried again without the change, or the episode ends.
/// The same seed gives the same run.
/// </summary>
internal sealed class GuidedRun
{
    private const int ScansBetweenLooks = 8;
    private const int PercentFromStart = 3;
    private const int ShortestEpisode = 30;
    private const int LongEpisode = 2_000;
    private const int LongestEpisode = 60_000;
    private const int PercentLongest = 3;

    private readonly CompiledStepper _stepper;
    private readonly Random _random;
    private readonly InputPlay _play;
    private readonly Followers _followers;
    private readonly Places _places;
    private readonly ImmutableArray<TraceInput> _inputs;
    private readonly int _requirements;
    private readonly int _assumptions;
    private readonly long[] _broken;
    private readonly int[] _openGoals;
    private readonly long[] _statesBefore;
    private readonly long[] _inputsBefore;
    private readonly Recording? _recording;
    private int _open;

    private GuidedRun(LoadedSite site, CompiledSystem compiled, int seed, bool recorded)
    {
        TransitionSystem system = compiled.System;
        _stepper = new CompiledStepper(compiled);
        _random = new Random(seed);
        _inputs = TraceInputs.Of(system, site.Metadata);
        _followers = new Followers(site, system, _inputs, _random);
        _play = new InputPlay(system, _inputs, _random);
        _places = new Places(site, system, _random);
        _requirements = system.Requirements.Length;
        _assumptions = system.Assumptions.Length;
        _broken = new long[_requirements];
        _openGoals = [.. Enumerable.Range(_requirements + _assumptions, system.Goals.Length)];
        _open = _openGoals.Length;
        _statesBefore = new long[system.States.Length];
        _inputsBefore = new long[system.Inputs.Length];
        _recording = recorded ? new Recording() : null;
    }

    /// <summary>What a run observes: the requirements, the assumptions, the goals.</summary>
    public static CompiledSystem Compile(TransitionSystem system) => CompiledSystem.Compile(
        system,
        [
            .. system.Requirements.Select(requirement => requirement.Holds),
            .. system.Assumptions.Select(assumption => assumption.Holds),
            .. system.Goals.Select(goal => goal.Reached),
        ]);

    public static GuidedResult Run(LoadedSite site, CompiledSystem compiled, ImmutableArray<InputScript> scripts, int seed, long scans)
    {
        GuidedRun run = new(site, compiled, seed, recorded: false);
        run.Go(scripts, scans);
        TransitionSystem system = compiled.System;
        return new GuidedResult(
            seed,
            scans,
            [.. system.Requirements.Zip(run._broken).Where(pair => pair.Second > 0).Select(pair => new GuidedBreak(pair.First, pair.Second))],
            system.Goals.Length - run._open,
            system.Goals.Length,
            run._places.Count);
    }

    /// <summary>The inputs from the start of the system to a scan of a run, without the episodes that did not lead there.</summary>
    public static Trace Told(LoadedSite site, CompiledSystem compiled, ImmutableArray<InputScript> scripts, int seed, long scan)
    {
        GuidedRun run = new(site, compiled, seed, recorded: true);
        run.Go(scripts, scan);
        return run._recording!.Told();
    }

    private void Go(ImmutableArray<InputScript> scripts, long scans)
    {
        FromStart();
        Look(isFirst: true);
        long scan = 0;
        foreach (InputScript script in scripts)
        {
            scan = Go(script, scan, scans);
        }

        for (long end = scan; ++scan <= scans;)
        {
            if (scan > end)
            {
                end = scan + Begin(scan);
            }

            if (!Step(scan))
            {
                end = scan;
                continue;
            }

            Judge(scan);
            _followers.Follow(scan, _stepper.Outputs, _stepper.Inputs);
            bool isFirst = Goals();
            if (isFirst || scan % ScansBetweenLooks == 0)
            {
                Look(isFirst);
            }
        }
    }

    /// <summary>Goes through a script up to its end, or to a scan that an assumption forbids; answers the last scan's number.</summary>
    private long Go(InputScript script, long scan, long scans)
    {
        int[] places = script.PlacesIn(_stepper.System);
        FromStart();
        for (int own = 0; own < script.Scans && scan < scans; own++)
        {
            scan++;
            script.Set(own, places, _stepper.Inputs);
            _recording?.Add(_stepper.Inputs);
            _stepper.Step();
            if (!KeepsAssumptions)
            {
                break;
            }

            Judge(scan);
            bool isFirst = Goals();
            if (isFirst || own % ScansBetweenLooks == 0)
            {
                Look(isFirst);
            }
        }

        return scan;
    }

    private void FromStart()
    {
        _stepper.Initialise();
        for (int index = 0; index < _inputs.Length; index++)
        {
            _stepper.Inputs[index] = _inputs[index].Rest;
        }

        _recording?.BeginAt(null);
    }

    private long Begin(long scan)
    {
        if (_random.Next(100) < PercentFromStart)
        {
            FromStart();
        }
        else
        {
            int slot = _places.Begin(_stepper);
            _recording?.BeginAt(slot);
        }

        _followers.Begin();
        _play.Begin(scan, _stepper.Inputs, _followers);
        return _play.Long(ShortestEpisode, _random.Next(100) < PercentLongest ? LongestEpisode : LongEpisode);
    }

    /// <summary>One scan; false where an assumption is broken whatever is done.</summary>
    private bool Step(long scan)
    {
        if (_assumptions > 0)
        {
            _stepper.States.CopyTo(_statesBefore);
            _stepper.Inputs.CopyTo(_inputsBefore, 0);
        }

        _play.Play(scan, _stepper.Inputs);
        _recording?.Add(_stepper.Inputs);
        _stepper.Step();
        if (KeepsAssumptions)
        {
            return true;
        }

        _stepper.SetStates(_statesBefore);
        _inputsBefore.CopyTo(_stepper.Inputs, 0);
        _recording?.AddInstead(_stepper.Inputs);
        _stepper.Step();
        return KeepsAssumptions;
    }

    private bool KeepsAssumptions => _stepper.Observed.AsSpan(_requirements, _assumptions).IndexOf(0L) < 0;

    private void Judge(long scan)
    {
        if (_stepper.Observed.AsSpan(0, _requirements).IndexOf(0L) < 0)
        {
            return;
        }

        for (int index = 0; index < _requirements; index++)
        {
            if (_stepper.Observed[index] == 0 && _broken[index] == 0)
            {
                _broken[index] = scan;
            }
        }
    }

    /// <summary>Whether a goal was reached for the first time.</summary>
    private bool Goals()
    {
        bool reached = false;
        for (int place = _open - 1; place >= 0; place--)
        {
            if (_stepper.Observed[_openGoals[place]] != 0)
            {
                _openGoals[place] = _openGoals[--_open];
                reached = true;
            }
        }

        return reached;
    }

    private void Look(bool isFirst) => _places.Look(_stepper.States, _stepper.Inputs, isFirst, _recording is null ? null : _recording.Keep);
}
