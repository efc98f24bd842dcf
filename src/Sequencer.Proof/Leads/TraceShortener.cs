using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;

namespace Sequencer.Proof.Leads;

/// <summary>
/// Makes a failing run easier to read while it still fails: leaves out segments, shortens the rest by
/// halving, and gives inputs the value nearest 0 or the one they had before.
/// </summary>
internal sealed class TraceShortener
{
    private const int MostTrials = 4000;
    private const int MostSegments = 400;
    private const int PassedStates = 128;

    private readonly TransitionSystem _system;
    private readonly SearchRun _run;
    private readonly Action _look;
    private readonly PassedState _start;
    private List<PassedState> _passed = [];
    private Trace _best;
    private int _trials;

    private TraceShortener(TransitionSystem system, ExpressionBuilder builder, Trace failing, Action look)
    {
        _system = system;
        _run = new SearchRun(system, builder.And(system.Assumptions.Select(assumption => assumption.Holds)), system.Requirements[0].Holds, []);
        _look = look;
        _start = new PassedState(0, SearchRun.InitialStates(system));
        _best = failing;
    }

    /// <param name="system">The system with its one requirement.</param>
    /// <param name="builder">Whose expressions the system's are.</param>
    /// <param name="failing">A run that fails in its last scan.</param>
    /// <param name="isShortest">Whether no shorter run fails: then only inputs are looked at.</param>
    /// <param name="look">Called often; may throw to give up.</param>
    public static Trace Shorten(TransitionSystem system, ExpressionBuilder builder, Trace failing, bool isShortest, Action look)
    {
        TraceShortener shortener = new(system, builder, failing, look);
        shortener.Try(failing.Segments);
        for (bool better = true; better && failing.Segments.Length <= MostSegments;)
        {
            better = (!isShortest && (shortener.DropSegments() | shortener.ShortenSegments())) | shortener.Neutralise();
        }

        return shortener._best;
    }

    private bool DropSegments()
    {
        bool better = false;
        for (int segment = _best.Segments.Length - 1; segment >= 0; segment--)
        {
            better |= segment < _best.Segments.Length && Try(_best.Segments.RemoveAt(segment));
        }

        return better;
    }

    private bool ShortenSegments()
    {
        bool better = false;
        for (int segment = 0; segment < _best.Segments.Length; segment++)
        {
            for (int less = _best.Segments[segment].Scans / 2; less > 0; less /= 2)
            {
                while (segment < _best.Segments.Length && _best.Segments[segment].Scans > less
                    && Try(_best.Segments.SetItem(segment, _best.Segments[segment] with { Scans = _best.Segments[segment].Scans - less })))
                {
                    better = true;
                }
            }
        }

        return better;
    }

    private bool Neutralise()
    {
        bool better = false;
        for (int segment = 0; segment < _best.Segments.Length; segment++)
        {
            for (int input = 0; input < _system.Inputs.Length && segment < _best.Segments.Length; input++)
            {
                IntegerRange range = _system.Inputs[input].Range;
                better |= TryInput(segment, input, Math.Clamp(0, range.Minimum, range.Maximum))
                    || (segment > 0 && TryInput(segment, input, _best.Segments[segment - 1].Inputs[input]));
            }
        }

        return better;
    }

    /// <summary>Nearest 0 counts as simplest, then what the segment before has.</summary>
    private bool TryInput(int segment, int input, long value)
    {
        TraceSegment present = _best.Segments[segment];
        bool simplest = present.Inputs[input] == Math.Clamp(0, _system.Inputs[input].Range.Minimum, _system.Inputs[input].Range.Maximum);
        return !simplest && present.Inputs[input] != value
            && Try(_best.Segments.SetItem(segment, present with { Inputs = present.Inputs.SetItem(input, value) }));
    }

    /// <summary>What the candidate has in common with the best run, from the start on, is not played again.</summary>
    private bool Try(ImmutableArray<TraceSegment> segments)
    {
        _look();
        long alike = ScansAlike(segments);
        int kept = _passed.FindLastIndex(state => state.Scans <= alike) + 1;
        List<PassedState> passed = [.. _passed[..kept]];
        long apart = 1 + (_best.Scans / PassedStates);
        if (_trials++ >= MostTrials || _run.UpToFailure(segments, Last(), Pass) is not { } trace || trace.Scans > _best.Scans)
        {
            return false;
        }

        _best = trace;
        _passed = passed;
        return true;

        PassedState Last() => passed.Count > 0 ? passed[^1] : _start;

        void Pass(long scans, long[] states)
        {
            if (scans - Last().Scans >= apart)
            {
                passed.Add(new PassedState(scans, [.. states]));
            }
        }
    }

    /// <summary>After how many scans the inputs differ from the best run's.</summary>
    private long ScansAlike(ImmutableArray<TraceSegment> segments)
    {
        long scans = 0;
        foreach ((TraceSegment one, TraceSegment best) in segments.Zip(_best.Segments))
        {
            bool same = one.Inputs.AsSpan().SequenceEqual(best.Inputs.AsSpan());
            scans += same ? Math.Min(one.Scans, best.Scans) : 0;
            if (!same || one.Scans != best.Scans)
            {
                break;
            }
        }

        return scans;
    }
}
