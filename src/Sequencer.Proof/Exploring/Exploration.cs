using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Exploring;

/// <summary>
/// Real runs that look for something new: from a state reached, the solver is asked for inputs that make
/// some fact true or false for the first time, or fail; and timers with news ahead are let run. It goes
/// through a procedure step by step without ever unrolling it, and proves nothing.
/// </summary>
internal sealed class Exploration
{
    private const int StridesInDwell = 24;

    private readonly TransitionSystem _system;
    private readonly ExpressionBuilder _builder;
    private readonly FactTable _facts;
    private readonly StepQueries _queries;
    private readonly SearchRun _run;
    private readonly Random _random;
    private readonly List<Place> _places = [];
    private readonly HashSet<Literal> _seen = [];
    private readonly Stack<int> _open = [];

    public Exploration(TransitionSystem system, ExpressionBuilder builder, FactTable facts, StepQueries queries, int seed)
    {
        _system = system;
        _builder = builder;
        _facts = facts;
        _queries = queries;
        _random = new Random(seed);
        Expression assumed = builder.And(system.Assumptions.Select(assumption => assumption.Holds));
        _run = new SearchRun(system, assumed, system.Requirements[0].Holds, facts.Facts);
        Reach(new Place([.. SearchRun.InitialStates(system)], -1, new TraceSegment([], 0)));
    }

    /// <summary>The states reached.</summary>
    public IEnumerable<long[]> Reached => _places.Select(place => place.States);

    /// <summary>A failing run, or null when nothing new was found or so many places were looked at.</summary>
    public Trace? Run(int places)
    {
        for (int count = 0; count < places && _open.TryPop(out int place); count++)
        {
            if (Expand(place) is { } found)
            {
                return _run.UpToFailure(found);
            }
        }

        return null;
    }

    private List<TraceSegment>? Expand(int place)
    {
        if (Seek(place) is { } found)
        {
            return found;
        }

        for (int strides = 0; strides < StridesInDwell; strides++)
        {
            int known = _seen.Count;
            int next = LetTimersRun(place);
            if (next < 0)
            {
                return null;
            }

            place = next;
            if (Seek(place) is { } later)
            {
                return later;
            }

            if (_seen.Count > known)
            {
                _open.Push(place);
                return null;
            }
        }

        return null;
    }

    /// <summary>A failure in one scan from here; else reaches whatever is new in one scan from here.</summary>
    private List<TraceSegment>? Seek(int place)
    {
        ImmutableArray<long> states = [.. _places[place].States];
        if (_queries.CanStep(states, null, []))
        {
            return Way(place, new TraceSegment(_queries.ModelInputs(), 1));
        }

        while (_queries.CanStepToAny(states, Unseen()))
        {
            _open.Push(Go(place, _queries.ModelInputs(), 1));
        }

        return null;
    }

    /// <summary>Holds inputs that let timers with news ahead run, until just before something flips.</summary>
    private int LetTimersRun(int place)
    {
        long[] states = _places[place].States;
        Expression[] rises =
        [
            .. _system.States.Where(state => state.Variable.Sort == Sort.Integer && HasNews(state.Variable.Index))
                .Select(state => _builder.Greater(_builder.Variable(state.Variable), _builder.Constant(states[state.Variable.Index]))),
        ];
        _random.Shuffle(rises);
        if (!_queries.CanStep([.. states], new Cube([]), rises.Select(_queries.AfterScan)))
        {
            return -1;
        }

        ImmutableArray<long> inputs = _queries.ModelInputs();
        int scans = _run.Stride(inputs.AsSpan(), [.. states], int.MaxValue);
        int next = Go(place, inputs, Math.Max(1, scans - 1));
        return _places[next].States.AsSpan().SequenceEqual(states) ? -1 : next;
    }

    private bool HasNews(int state) =>
        Enumerable.Range(0, _facts.Count).Any(fact =>
            _facts.Support(fact).Contains(state) && !(_seen.Contains(Literal.Of(fact)) && _seen.Contains(Literal.Of(fact, true))));

    private IEnumerable<Literal> Unseen() =>
        Enumerable.Range(0, 2 * _facts.Count).Select(code => new Literal(code)).Where(literal => !_seen.Contains(literal));

    private int Go(int from, ImmutableArray<long> inputs, int scans)
    {
        long[] states = [.. _places[from].States];
        for (int left = scans; left > 0;)
        {
            left -= _run.Stride(inputs.AsSpan(), states, left);
        }

        return Reach(new Place(states, from, new TraceSegment(inputs, scans)));
    }

    private int Reach(Place place)
    {
        bool[] values = _facts.Values(place.States);
        for (int fact = 0; fact < values.Length; fact++)
        {
            _seen.Add(Literal.Of(fact, !values[fact]));
        }

        _places.Add(place);
        if (_places.Count == 1)
        {
            _open.Push(0);
        }

        return _places.Count - 1;
    }

    private List<TraceSegment> Way(int place, TraceSegment last)
    {
        Stack<TraceSegment> backwards = new([last]);
        for (; _places[place].From >= 0; place = _places[place].From)
        {
            backwards.Push(_places[place].By);
        }

        List<TraceSegment> way = [];
        foreach (TraceSegment segment in backwards)
        {
            SearchRun.Append(way, segment.Inputs, segment.Scans);
        }

        return way;
    }

    private sealed record Place(long[] States, int From, TraceSegment By);
}
