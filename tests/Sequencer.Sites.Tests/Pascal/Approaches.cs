using System.Collections.Immutable;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Tests.Variants.Guided;

namespace Sequencer.Sites.Tests.Pascal;

/// <summary>
/// How transitions were taken, so that they can be taken again. The last scans are kept in a ring; when a transition is taken, a state of the
/// ring becomes a place to begin from, a few for each transition, and later ones now and then instead.
/// </summary>
internal sealed class Approaches
{
    /// <summary>Scans in the ring, the longest approach.</summary>
    private const int Ring = 32;

    private const int Kept = 4;
    private const int ScansBetweenKept = 16;
    private const int PercentUnchanged = 25;
    private const int MostChanges = 3;

    private readonly Random _random;
    private readonly ImmutableArray<long[]> _values;
    private readonly int _power;
    private readonly long[][] _states;
    private readonly long[][] _inputs;
    private readonly List<Approach>[] _known;
    private readonly int _firstRing;
    private readonly int _transitions;
    private long _scan;

    public Approaches(PascalSite site, Random random)
    {
        _random = random;
        _values = ComparedValues.Of(site.System, TraceInputs.Of(site.System, site.Site.Metadata));
        _power = site.PowerInput;
        _transitions = site.Transitions.Length;
        _known = [.. Enumerable.Range(0, _transitions).Select(_ => new List<Approach>())];
        _states = [.. Enumerable.Range(0, Ring).Select(_ => new long[site.System.States.Length])];
        _inputs = [.. Enumerable.Range(0, Ring).Select(_ => new long[site.System.Inputs.Length])];
        _firstRing = Places.Slots;
    }

    /// <summary>Places that the Pascal program needs for so many transitions: those of guided runs, the ring, and the approaches.</summary>
    public static int PlacesFor(int transitions) => Places.Slots + Ring + (transitions * Kept);

    /// <summary>What was before has nothing to do with what comes.</summary>
    public void Forget() => _scan = 0;

    /// <summary>Notes the state before a scan and the scan's inputs; answers the place for it.</summary>
    public int Before(ReadOnlySpan<long> states, long[] inputs)
    {
        int slot = (int)(_scan++ % Ring);
        states.CopyTo(_states[slot]);
        inputs.CopyTo(_inputs[slot], 0);
        return _firstRing + slot;
    }

    /// <summary>A transition was taken in the scan noted last. Answers what is to be kept of it: from which place of the ring, and where to.</summary>
    public (int From, int To)? Reached(int transition)
    {
        List<Approach> known = _known[transition];
        if (known.Count == Kept && _random.Next(ScansBetweenKept) > 0)
        {
            return null;
        }

        int length = 1 + _random.Next((int)Math.Min(_scan, Ring));
        int index = known.Count < Kept ? known.Count : _random.Next(Kept);
        int slot = Slot(length);
        int place = _firstRing + Ring + (transition * Kept) + index;
        Approach approach = new(place, [.. _states[slot]], [.. Enumerable.Range(0, length).Select(scan => (long[])_inputs[Slot(length - scan)].Clone())]);
        if (index == known.Count)
        {
            known.Add(approach);
        }
        else
        {
            known[index] = approach;
        }

        return (_firstRing + slot, place);

        int Slot(int back) => (int)((_scan - back) % Ring);
    }

    /// <summary>The transition taken least often of those that were taken; -1 where none was.</summary>
    public int Rarest(long[] taken)
    {
        int rarest = -1;
        for (int transition = 0; transition < _transitions; transition++)
        {
            if (_known[transition].Count > 0 && (rarest < 0 || taken[transition] < taken[rarest]))
            {
                rarest = transition;
            }
        }

        return rarest;
    }

    public Approach Choose(int transition) => _known[transition][_random.Next(_known[transition].Count)];

    /// <summary>A few inputs that are to be otherwise all along; none in some.</summary>
    public (int Input, long Value)[] Changes(ImmutableArray<TraceInput> inputs) => _random.Next(100) < PercentUnchanged ? [] :
        [.. Enumerable.Range(0, 1 + _random.Next(MostChanges)).Select(_ => _random.Next(inputs.Length)).Where(input => input != _power)
            .Select(input => (input, _values[input][_random.Next(_values[input].Length)]))];
}
