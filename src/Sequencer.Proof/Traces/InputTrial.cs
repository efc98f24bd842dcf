using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Traces;

/// <summary>
/// Tries of one run with inputs put to rest, held, or their changes left out. A try is kept where the run still fails and
/// is simpler: fewer scans, else fewer changes, else less time away from rest. The number of tries is bounded, so the
/// answer depends on nothing but the run.
/// </summary>
internal sealed class InputTrial
{
    private const int MostTrials = 2000;
    private const int FewestTrials = 100;

    /// <summary>Nodes of the graph times segments, over all tries: a few seconds.</summary>
    private const long MostWork = 60_000_000;

    private readonly ImmutableArray<InputRest> _rests;
    private readonly SearchRun _run;
    private (long Scans, long Changes, long Away) _cost;
    private long _trials;

    public InputTrial(TransitionSystem system, ExpressionBuilder builder, Trace failing, ImmutableArray<InputRest> rests)
    {
        _rests = rests;
        _run = new SearchRun(system, builder.And(system.Assumptions.Select(assumption => assumption.Holds)), system.Requirements[0].Holds, []);
        Best = failing;
        _cost = Cost(failing);
        _trials = Math.Clamp(MostWork / (builder.Count * (failing.Segments.Length + 8L)), FewestTrials, MostTrials);
    }

    public Trace Best { get; private set; }

    /// <summary>One round of all kinds of tries; whether any of them was kept.</summary>
    public bool Improve()
    {
        (long, long, long) before = _cost;
        int[] all = [.. Enumerable.Range(0, _rests.Length)];
        Alike(all, input => _rests[input].Value);
        Alike([.. all.Where(Changes)], input => Best.Segments[^1].Inputs[input]);
        Alike([.. all.Where(Changes)], input => Best.Segments[0].Inputs[input]);
        for (int segment = Best.Segments.Length - 1; segment >= 0; segment--)
        {
            InSegment(segment, all, input => _rests[input].Value);
            InSegment(segment, all, input => segment > 0 ? Best.Segments[segment - 1].Inputs[input] : _rests[input].Value);
            LetGo(segment);
        }

        LeaveOut();
        return _trials > 0 && _cost.CompareTo(before) < 0;
    }

    private bool Changes(int input) => Best.Segments.Any(segment => segment.Inputs[input] != Best.Segments[0].Inputs[input]);

    /// <summary>Gives inputs one value through the whole run: all of them, or else each half of them.</summary>
    private void Alike(int[] inputs, Func<int, long> value)
    {
        if (Array.Exists(inputs, input => Best.Segments.Any(segment => segment.Inputs[input] != value(input)))
            && !Try(Best.Segments.Select(segment => With(segment, inputs, value))) && inputs.Length > 1)
        {
            Alike(inputs[..(inputs.Length / 2)], value);
            Alike(inputs[(inputs.Length / 2)..], value);
        }
    }

    /// <summary>The same in one segment.</summary>
    private void InSegment(int place, int[] inputs, Func<int, long> value)
    {
        if (place < Best.Segments.Length
            && Array.Exists(inputs, input => Best.Segments[place].Inputs[input] != value(input))
            && !Try(Best.Segments.SetItem(place, With(Best.Segments[place], inputs, value))) && inputs.Length > 1)
        {
            InSegment(place, inputs[..(inputs.Length / 2)], value);
            InSegment(place, inputs[(inputs.Length / 2)..], value);
        }
    }

    /// <summary>What is pressed is let go after the first scan.</summary>
    private void LetGo(int place)
    {
        if (place >= Best.Segments.Length || Best.Segments[place] is not { Scans: > 1 } segment)
        {
            return;
        }

        int[] pressed = [.. Enumerable.Range(0, _rests.Length).Where(input => _rests[input].IsMomentary && segment.Inputs[input] != _rests[input].Value)];
        if (pressed.Length > 0)
        {
            TraceSegment after = With(segment, pressed, input => _rests[input].Value) with { Scans = segment.Scans - 1 };
            Try(Best.Segments.RemoveAt(place).Insert(place, after).Insert(place, segment with { Scans = 1 }));
        }
    }

    private void LeaveOut()
    {
        for (int place = Best.Segments.Length - 1; place >= 0; place--)
        {
            if (place < Best.Segments.Length && Best.Segments.Length > 1 && !Try(Best.Segments.RemoveAt(place)))
            {
                Shorten(place);
            }
        }
    }

    private void Shorten(int place)
    {
        for (int less = Best.Segments[place].Scans / 2; less > 0; less /= 2)
        {
            while (place < Best.Segments.Length && Best.Segments[place].Scans > less
                && Try(Best.Segments.SetItem(place, Best.Segments[place] with { Scans = Best.Segments[place].Scans - less })))
            {
            }
        }
    }

    private static TraceSegment With(TraceSegment segment, int[] inputs, Func<int, long> value)
    {
        long[] changed = [.. segment.Inputs];
        foreach (int input in inputs)
        {
            changed[input] = value(input);
        }

        return segment with { Inputs = [.. changed] };
    }

    private bool Try(IEnumerable<TraceSegment> segments)
    {
        if (_trials <= 0)
        {
            return false;
        }

        _trials--;
        if (_run.UpToFailure(segments) is not { } trace || Cost(trace) is var cost && cost.CompareTo(_cost) >= 0)
        {
            return false;
        }

        (Best, _cost) = (trace, cost);
        return true;
    }

    private (long Scans, long Changes, long Away) Cost(Trace trace)
    {
        long changes = 0;
        long away = 0;
        for (int input = 0; input < _rests.Length; input++)
        {
            InputRest rest = _rests[input];
            long before = rest.Value;
            foreach (TraceSegment segment in trace.Segments)
            {
                long value = segment.Inputs[input];
                changes += value == before || (rest.IsMomentary && value == rest.Value) ? 0 : 1;
                away += value == rest.Value ? 0 : rest.IsMomentary ? segment.Scans : 1;
                before = value;
            }
        }

        return (trace.Scans, changes, away);
    }
}
