using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Runs;

/// <summary>
/// A run of a system in many-scan strides: with the inputs held, the states mostly change by the same
/// amount in every scan until some comparison flips, and that scan is found by division.
/// </summary>
internal sealed class SearchRun
{
    private readonly TransitionSystem _system;
    private readonly AffineScan _scan;
    private readonly int[] _next;
    private readonly int _holds;
    private readonly int _assumed;
    private readonly long[] _after;
    private readonly long[] _changes;

    /// <param name="system">What runs.</param>
    /// <param name="assumed">The conjunction of the assumptions.</param>
    /// <param name="holds">What is looked for being false.</param>
    /// <param name="watched">Facts of a state whose flipping ends a stride.</param>
    public SearchRun(TransitionSystem system, Expression assumed, Expression holds, IEnumerable<Expression> watched)
    {
        _system = system;
        _scan = new AffineScan([.. system.States.Select(state => state.Next), assumed, holds, .. watched]);
        _next = [.. system.States.Select(state => _scan.PlaceOf(state.Next))];
        _holds = _scan.PlaceOf(holds);
        _assumed = _scan.PlaceOf(assumed);
        _after = new long[_next.Length];
        _changes = new long[_next.Length];
    }

    public static ImmutableArray<long> InitialStates(TransitionSystem system) => [.. system.States.Select(state => state.Initial)];

    /// <summary>Whether the last scan kept the assumptions.</summary>
    public bool KeptAssumptions => _scan.Value(_assumed) != 0;

    /// <summary>Whether the last scan broke the requirement.</summary>
    public bool BrokeRequirement => _scan.Value(_holds) == 0;

    /// <summary>Whether one of the facts watched was so in the first of the last scans, and so in all of them.</summary>
    public bool IsSo(Expression watched) => _scan.Value(_scan.PlaceOf(watched)) != 0;

    /// <summary>
    /// Runs at least one scan and at most <paramref name="longest"/>, all of them alike: no comparison
    /// differs between the first and the last of them. <paramref name="states"/> becomes the state after.
    /// </summary>
    public int Stride(ReadOnlySpan<long> inputs, long[] states, int longest)
    {
        _scan.Evaluate(inputs, states);
        for (int index = 0; index < _next.Length; index++)
        {
            _after[index] = _scan.Value(_next[index]);
            _changes[index] = _after[index] - states[index];
        }

        long steady = longest == 1 ? 1 : _scan.Project(_changes);
        for (int index = 0; index < _next.Length && steady > 1; index++)
        {
            bool boolean = _system.States[index].Variable.Sort == Sort.Boolean;
            steady = (boolean ? _changes[index] == 0 : _scan.Change(_next[index]) == _changes[index]) ? steady : 1;
        }

        int scans = (int)Math.Min(steady, longest);
        for (int index = 0; index < states.Length; index++)
        {
            states[index] += scans * _changes[index];
        }

        return scans;
    }

    /// <summary>
    /// Plays a trace from the initial state up to the first scan that breaks the requirement; null if
    /// none does, or an assumption is broken first.
    /// </summary>
    public Trace? UpToFailure(IEnumerable<TraceSegment> segments) => UpToFailure(segments, new PassedState(0, InitialStates(_system)), static (_, _) => { });

    /// <summary>The same, from a state that the trace passes; <paramref name="pass"/> is told how many scans are played and the states then.</summary>
    public Trace? UpToFailure(IEnumerable<TraceSegment> segments, PassedState from, Action<long, long[]> pass)
    {
        long[] states = [.. from.States];
        long passed = 0;
        List<TraceSegment> played = [];
        foreach (TraceSegment segment in segments)
        {
            int before = (int)Math.Clamp(from.Scans - passed, 0, segment.Scans);
            if (before > 0)
            {
                Append(played, segment.Inputs, before);
                passed += before;
            }

            for (int left = segment.Scans - before; left > 0;)
            {
                int scans = Stride(segment.Inputs.AsSpan(), states, left);
                if (!KeptAssumptions)
                {
                    return null;
                }

                bool broke = BrokeRequirement;
                Append(played, segment.Inputs, broke ? 1 : scans);
                if (broke)
                {
                    return new Trace([.. played]);
                }

                left -= scans;
                passed += scans;
                pass(passed, states);
            }
        }

        return null;
    }

    public static void Append(List<TraceSegment> segments, ImmutableArray<long> inputs, int scans)
    {
        if (segments.Count > 0 && segments[^1].Inputs.AsSpan().SequenceEqual(inputs.AsSpan()))
        {
            segments[^1] = segments[^1] with { Scans = segments[^1].Scans + scans };
        }
        else
        {
            segments.Add(new TraceSegment(inputs, scans));
        }
    }
}
