using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Leads;

/// <summary>
/// Follows an abstract way to a failure with exact values. Where the next cube cannot be entered in one
/// scan it dwells in the present one, with inputs that bring the integers nearer to those of the
/// obligation's witness: an abstract scan may stand for a timer's whole run.
/// </summary>
internal sealed class LeadFollower
{
    private const int MostDwells = 400;

    private readonly TransitionSystem _system;
    private readonly ExpressionBuilder _builder;
    private readonly StepQueries _queries;
    private readonly SearchRun _run;
    private readonly List<TraceSegment> _segments = [];
    private long[] _states;

    public LeadFollower(TransitionSystem system, ExpressionBuilder builder, FactTable facts, StepQueries queries)
    {
        _system = system;
        _builder = builder;
        _queries = queries;
        _states = [.. SearchRun.InitialStates(system)];
        Expression assumed = builder.And(system.Assumptions.Select(assumption => assumption.Holds));
        _run = new SearchRun(system, assumed, system.Requirements[0].Holds, facts.Facts);
    }

    /// <summary>The failing run, or null and where the lead went cold.</summary>
    public Trace? Follow(Obligation lead, out Stuck? stuck)
    {
        for (Obligation? obligation = lead; obligation is not null; obligation = obligation.Next)
        {
            ImmutableArray<long> entry = [.. _states];
            for (int dwells = 0; !CanLeave(obligation); dwells++)
            {
                if (dwells == MostDwells || !Dwell(obligation, obligation))
                {
                    stuck = new Stuck(obligation, entry, [.. _states]);
                    return null;
                }
            }

            LeaveLate(obligation);
        }

        stuck = null;
        return _run.UpToFailure(_segments);
    }

    private bool CanLeave(Obligation obligation) =>
        _queries.CanStep([.. _states], obligation.Next?.Cube, Likeness(obligation.Next));

    /// <summary>
    /// Leaves the obligation's cube for the next, after a dwell if that brings the integers nearer to what
    /// the next one wants: its timers may have been started long ago.
    /// </summary>
    private void LeaveLate(Obligation obligation)
    {
        ImmutableArray<long> inputs = _queries.ModelInputs();
        for (int dwells = 0; dwells < MostDwells && obligation.Next is { Exact.Count: > 0 } next; dwells++)
        {
            (long[] states, TraceSegment[] segments) = ([.. _states], [.. _segments]);
            if (!Dwell(obligation, next) || !CanLeave(obligation))
            {
                _states = states;
                _segments.Clear();
                _segments.AddRange(segments);
                break;
            }

            inputs = _queries.ModelInputs();
        }

        Play(inputs, 1, _states);
    }

    /// <summary>Wishes that the integers which mattered to the obligation have its witness's values.</summary>
    private IEnumerable<Literal> Likeness(Obligation? obligation) =>
        obligation is null
            ? []
            : obligation.Exact.Order().Select(state =>
                _queries.AfterScan(_builder.Equal(Variable(state), _builder.Constant(obligation.Witness[state]))));

    /// <summary>Some scans within the obligation's cube that bring integers nearer to the wanted witness.</summary>
    private bool Dwell(Obligation obligation, Obligation wanted)
    {
        int[] apart = [.. wanted.Exact.Order().Where(state => _states[state] != wanted.Witness[state])];
        ImmutableArray<long> before = [.. _states];
        Literal[] wishes = [.. apart.Select(state => _queries.AfterScan(Nearer(state, wanted.Witness[state])))];
        if (apart.Length == 0 || !_queries.CanStep(before, obligation.Cube, wishes))
        {
            return false;
        }

        ImmutableArray<long> inputs = _queries.ModelInputs();
        long[] after = [.. _states];
        _run.Stride(inputs.AsSpan(), after, 1);
        int[] nearing = [.. apart.Where(state => IsNearer(after[state], before[state], wanted.Witness[state]))];
        if (nearing.Length == 0)
        {
            return false;
        }

        long longest = nearing.Min(state => Math.Abs(wanted.Witness[state] - before[state]) / Math.Max(1, Math.Abs(after[state] - before[state])));
        Play(inputs, ScansBeforeFlip(inputs, (int)Math.Clamp(longest, 1, int.MaxValue)), _states);
        return true;
    }

    /// <summary>How many scans to hold the inputs: up to the last before a comparison flips, but at least one.</summary>
    private int ScansBeforeFlip(ImmutableArray<long> inputs, int longest) =>
        Math.Max(1, _run.Stride(inputs.AsSpan(), [.. _states], longest) - 1);

    private void Play(ImmutableArray<long> inputs, int scans, long[] states)
    {
        SearchRun.Append(_segments, inputs, scans);
        while (scans > 0)
        {
            scans -= _run.Stride(inputs.AsSpan(), states, scans);
        }
    }

    private Expression Nearer(int state, long wanted)
    {
        Expression present = _builder.Constant(_states[state]);
        return wanted > _states[state] ? _builder.Greater(Variable(state), present) : _builder.Less(Variable(state), present);
    }

    private static bool IsNearer(long after, long before, long wanted) => wanted > before ? after > before : after < before;

    private Expression Variable(int state) => _builder.Variable(_system.States[state].Variable);
}
