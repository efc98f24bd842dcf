using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Tests.Variants.Guided;
using Sequencer.Testing.Pascal;

namespace Sequencer.Sites.Tests.Pascal;

/// <summary>
/// The system and the Pascal program side by side. Scripts come first, then episodes: some go where few went before, some go again to a
/// transition that was taken too seldom, from a state some scans before it, with other inputs changed. The same seed gives the same run.
/// </summary>
internal sealed class PascalRun : IDisposable
{
    /// <summary>A transition taken so often is not gone to on purpose any more.</summary>
    public const long Wanted = 100;

    private const int ScansBetweenLooks = 8;
    private const int PercentFromStart = 3;
    private const int PercentAgain = 20;
    private const int PercentAgainWhileSeldom = 85;
    private const int ShortestEpisode = 30;
    private const int LongEpisode = 2_000;
    private const int PercentLongest = 3;
    private const int LongestEpisode = 60_000;

    private readonly PascalSite _site;
    private readonly CompiledStepper _stepper;
    private readonly PascalLockstep _pascal;
    private readonly Random _random;
    private readonly ImmutableArray<TraceInput> _inputs;
    private readonly InputPlay _play;
    private readonly Followers _followers;
    private readonly Places _places;
    private readonly Approaches _approaches;
    private readonly long[] _given;
    private readonly int _results;

    public PascalRun(PascalSite site, int seed)
    {
        _site = site;
        _stepper = new CompiledStepper(site.Compiled);
        _pascal = new PascalLockstep(site.Program);
        _random = new Random(seed);
        _inputs = TraceInputs.Of(site.System, site.Site.Metadata);
        _followers = new Followers(site.Site, site.System, _inputs, _random);
        _play = new InputPlay(site.System, _inputs, _random);
        _places = new Places(site.Site, site.System, _random);
        _approaches = new Approaches(site, _random);
        _given = new long[site.InputPlaces.Count];
        _results = site.Program.Results.Length;
        Taken = new long[site.Transitions.Length];
    }

    /// <summary>How often each transition was taken.</summary>
    public long[] Taken { get; }

    public long PowerLosses { get; private set; }

    public long Scans => _pascal.Scans;

    public string? Difference => _pascal.Difference;

    /// <summary>The inputs of a scenario, from the start.</summary>
    public void Play(InputScript script)
    {
        int[] places = script.PlacesIn(_site.System);
        FromStart();
        for (int scan = 0; scan < script.Scans && Difference is null; scan++)
        {
            script.Set(scan, places, _stepper.Inputs);
            Step();
        }
    }

    /// <summary>The inputs of a way, from the start.</summary>
    public void Play(Trace way)
    {
        FromStart();
        foreach (TraceSegment segment in way.Segments)
        {
            segment.Inputs.CopyTo(_stepper.Inputs);
            for (long scan = 0; scan < segment.Scans && Difference is null; scan++)
            {
                Step();
            }
        }
    }

    /// <summary>Episodes until so many scans were run in all, or something differs. Answers whether nothing did.</summary>
    public bool Go(long scans)
    {
        if (Scans == 0)
        {
            FromStart();
            Look(isFirst: true);
        }

        while (Scans < scans && Difference is null)
        {
            int rarest = _approaches.Rarest(Taken);
            int again = rarest >= 0 && _random.Next(100) < (Taken[rarest] < Wanted ? PercentAgainWhileSeldom : PercentAgain) ? rarest : -1;
            long end = Scans + (again >= 0 ? Approach(again) : Begin());
            while (Scans < end && Scans < scans && Difference is null)
            {
                _play.Play(Scans, _stepper.Inputs);
                Step();
                _followers.Follow(Scans, _stepper.Outputs, _stepper.Inputs);
            }
        }

        return _pascal.Finish();
    }

    public void Dispose() => _pascal.Dispose();

    private void FromStart()
    {
        _stepper.Initialise();
        for (int index = 0; index < _inputs.Length; index++)
        {
            _stepper.Inputs[index] = _inputs[index].Rest;
        }

        _pascal.Initialise();
        _approaches.Forget();
    }

    private long Begin()
    {
        if (_random.Next(100) < PercentFromStart)
        {
            FromStart();
        }
        else
        {
            _pascal.Restore(_places.Begin(_stepper));
            _approaches.Forget();
        }

        _followers.Begin();
        _play.Begin(Scans, _stepper.Inputs, _followers);
        return _play.Long(ShortestEpisode, _random.Next(100) < PercentLongest ? LongestEpisode : LongEpisode);
    }

    /// <summary>Goes to a transition again, and on from there for a while; answers for how long.</summary>
    private int Approach(int transition)
    {
        Approach approach = _approaches.Choose(transition);
        _pascal.Restore(approach.Place);
        _stepper.SetStates(approach.States);
        _approaches.Forget();
        (int Input, long Value)[] changes = _approaches.Changes(_inputs);
        foreach (long[] inputs in approach.Inputs)
        {
            inputs.CopyTo(_stepper.Inputs, 0);
            foreach ((int input, long value) in changes)
            {
                _stepper.Inputs[input] = value;
            }

            Step();
        }

        _followers.Begin();
        _play.Begin(Scans, _stepper.Inputs, _followers);
        return (int)_play.Long(1, ShortestEpisode * 4);
    }

    private void Step()
    {
        _pascal.Keep(_approaches.Before(_stepper.States, _stepper.Inputs));
        _stepper.Step();
        bool power = _stepper.Inputs[_site.PowerInput] != 0;
        PowerLosses += power ? 1 : 0;
        for (int index = 0; index < _given.Length; index++)
        {
            _given[index] = _stepper.Inputs[_site.InputPlaces[index]];
        }

        _pascal.Scan(power, _given, _stepper.Observed.AsSpan(0, _results));
        bool isFirst = false;
        for (int transition = 0; transition < Taken.Length; transition++)
        {
            if (_stepper.Observed[_results + transition] != 0)
            {
                isFirst |= Taken[transition]++ == 0;
                if (_approaches.Reached(transition) is { } kept)
                {
                    _pascal.Copy(kept.From, kept.To);
                }
            }
        }

        if (isFirst || Scans % ScansBetweenLooks == 0)
        {
            Look(isFirst);
        }
    }

    private void Look(bool isFirst) => _places.Look(_stepper.States, _stepper.Inputs, isFirst, _pascal.Keep);
}
