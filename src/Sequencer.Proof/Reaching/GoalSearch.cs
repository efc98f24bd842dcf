using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Real runs that look for goals, each from where a goal before it was reached. From a state the solver is asked for inputs that
/// reach the goal in one scan. Where there are none, its refusal names the states that stand in the way, and only those are
/// changed: in one scan to a value not had before in this search, or by letting their clocks run. It proves nothing.
/// </summary>
internal sealed class GoalSearch
{
    private const int MostPlaces = 1_000;
    private const int MostPlacesInAll = 3_000;
    private const int MostIdlePlaces = 60;
    private const int MostChanges = 12;
    private const int MostStarts = 6;
    private const int MostCauses = 5;
    private const int MostStrides = 2_000;
    private const int LargestEnumeration = 12;
    private const int ScansUntilShown = 2;

    private readonly TransitionSystem _system;
    private readonly ExpressionBuilder _builder;
    private readonly FactTable _facts;
    private readonly StepQueries _queries;
    private readonly SearchRun _run;
    private readonly ImmutableArray<Goal> _goals;
    private readonly Literal[] _reached;
    private readonly ImmutableArray<Expression>[] _stretches;
    private readonly ImmutableArray<int>[] _before;
    private readonly List<Place>[] _ways;
    private readonly List<Place> _arrivals = [];
    private int _looked;
    private readonly (HashSet<int> Matter, Place? At)[] _inTheWay;
    private readonly ILookup<int, int> _factsOf;

    public GoalSearch(GoalSystem goals, Budget budget)
    {
        _system = goals.Slice.System;
        _builder = goals.Slice.Builder;
        _facts = FactHarvest.Collect(_system, _builder);
        _queries = new StepQueries(_system, _facts, budget);
        Expression assumed = _builder.And(_system.Assumptions.Select(assumption => assumption.Holds));
        _run = new SearchRun(_system, assumed, _system.Requirements[0].Holds, _facts.Facts);
        _goals = goals.Goals;
        _reached = [.. Enumerable.Range(0, _goals.Length).Select(goal => _facts.LiteralOf(_builder.Variable(_system.States[goals.FirstMemory + goal].Variable)))];
        Dictionary<string, int> numbers = Enumerable.Range(0, _goals.Length).ToDictionary(goal => _goals[goal].Name, goal => goal, StringComparer.Ordinal);
        _before = [.. _goals.Select(goal => goal.After.Where(numbers.ContainsKey).Select(name => numbers[name]).ToImmutableArray())];
        _stretches = [.. Enumerable.Range(0, _goals.Length).Select(goal => _before[goal].Prepend(goal).Select(one => goals.Meanwhile[one]).Where(stretch => !stretch.IsTrue).ToImmutableArray())];
        _ways = [.. _goals.Select(_ => new List<Place>())];
        _inTheWay = [.. _goals.Select(_ => (new HashSet<int>(), (Place?)null))];
        _factsOf = Enumerable.Range(0, _facts.Count).SelectMany(fact => _facts.Support(fact).Select(state => (state, fact))).ToLookup(pair => pair.state, pair => pair.fact);
    }

    /// <summary>Goes on until no goal is left whose way there is known so far.</summary>
    public void Run(Action<int> report)
    {
        Place start = new([.. SearchRun.InitialStates(_system)], null, new TraceSegment([], 0), 0);
        HashSet<(int Goal, Place From)> tried = [];
        for (bool found = true; found;)
        {
            found = false;
            for (int goal = 0; goal < _goals.Length; goal++)
            {
                if (_ways[goal].Count > 0)
                {
                    continue;
                }

                IEnumerable<int> further = _before[goal].SelectMany(earlier => _before[earlier]).Except(_before[goal]);
                IEnumerable<Place> known = _before[goal].IsEmpty ? [start] : _before[goal].Concat(further).SelectMany(earlier => _ways[earlier]);
                Place[] from = [.. known.OrderBy(place => place.Scans).Where(place => tried.Add((goal, place))).Take(MostStarts)];
                found |= from.Length > 0 && Arrive(Pursue(goal, from));
                Place[] promising =
                [
                    .. Promising(goal).OrderBy(place => _stretches[goal].Any(stretch => IsSo(place, stretch)) ? 0 : 1).ThenBy(place => place.Scans)
                        .Where(place => _ways[goal].Count == 0 && tried.Add((goal, place))).Take(MostStarts),
                ];
                foreach (Place place in promising.TakeWhile(_ => _ways[goal].Count == 0))
                {
                    found |= Arrive(Climb(place, goal));
                }

                report(_ways.Count(ways => ways.Count > 0));
            }
        }
    }

    /// <summary>From a place that is on no way to the goal yet: one after the other the goals on a way to it, then the goal.</summary>
    private Place? Climb(Place from, int goal)
    {
        Stack<int> chain = new([goal]);
        for (int at = goal; Earlier(at) is { } before && !chain.Contains(before); at = before)
        {
            chain.Push(before);
        }

        bool[] values = _facts.Values(from.States);
        Place place = from;
        foreach (int next in chain.Where(one => one != goal && !FactTable.Satisfies(values, _reached[one])))
        {
            // A step that is passed over this time is left out.
            place = Pursue(next, [place]) ?? place;
        }

        return Pursue(goal, [place]);
    }

    /// <summary>Of the goals before it the one reached soonest.</summary>
    private int? Earlier(int goal) =>
        _before[goal].Where(before => _ways[before].Count > 0).OrderBy(before => _ways[before][0].Scans).Select(before => (int?)before).FirstOrDefault();

    /// <summary>Places reached on the way to other goals, in which something is otherwise that stood in the way of this one.</summary>
    private IEnumerable<Place> Promising(int goal)
    {
        (HashSet<int> matter, Place? at) = _inTheWay[goal];
        return at is null ? [] : _arrivals.Where(place => matter.Any(state => place.States[state] != at.States[state]));
    }

    /// <summary>The run found that reaches the goal in its last scan; null without one.</summary>
    public IReadOnlyList<TraceSegment>? WayTo(int goal) => _ways[goal].Count == 0 ? null : Way(_ways[goal][0]);

    /// <summary>The last place looked at goes first; what no place so far has shown keeps it from going in circles.</summary>
    private Place? Pursue(int goal, Place[] from)
    {
        Stack<Place> open = new();
        HashSet<Literal> seen = [];
        Dictionary<int, long> furthest = [];
        foreach (Place place in from.Reverse())
        {
            Look(place);
        }

        int idle = 0;
        for (int count = 0; count < MostPlaces && _looked < MostPlacesInAll && idle < MostIdlePlaces && open.TryPop(out Place? place); count++)
        {
            _looked++;
            ImmutableArray<long> states = [.. place.States];
            if (_queries.CanStepToAny(states, [_queries.FactAfterScan(_reached[goal])], [], Kept(place, [])))
            {
                return Go(place, _queries.ModelInputs(), 1);
            }

            HashSet<int> matter = _queries.StatesThatMatter(states);
            if (count == 0)
            {
                _inTheWay[goal] = ([.. matter], place);
            }

            idle = IsFurther(place, matter, furthest) ? 0 : idle + 1;
            Expression? meanwhile = _stretches[goal].FirstOrDefault(stretch => IsSo(place, stretch));
            for (int causes = 0; causes < MostCauses && Move(place, matter, meanwhile, seen, causes == MostCauses - 1, Look) is { } why; causes++)
            {
                // What stands in the way cannot be changed at once either: what stands in the way of that?
                matter = why;
            }
        }

        return null;

        void Look(Place place)
        {
            bool[] values = _facts.Values(place.States);
            seen.UnionWith(values.Select((value, fact) => Literal.Of(fact, !value)));
            open.Push(place);
        }
    }

    /// <summary>Some clock in the way has come further than in any place before: a level that may rise only so fast takes many.</summary>
    private bool IsFurther(Place place, HashSet<int> matter, Dictionary<int, long> furthest)
    {
        bool further = false;
        foreach (int clock in matter.Where(IsClock))
        {
            if (!furthest.TryGetValue(clock, out long known) || place.States[clock] > known)
            {
                furthest[clock] = place.States[clock];
                further = true;
            }
        }

        return further;
    }

    /// <summary>
    /// Looks at places in which something that matters is otherwise: one scan away with a fact that is new, or a clock's run away.
    /// Where there is none, the states that stand in the way of that. A clock runs back only where <paramref name="backToo"/>.
    /// </summary>
    private HashSet<int>? Move(Place place, HashSet<int> matter, Expression? meanwhile, HashSet<Literal> seen, bool backToo, Action<Place> look)
    {
        ImmutableArray<long> states = [.. place.States];
        Literal[] required = meanwhile is null ? [] : [_queries.AfterScan(meanwhile)];
        bool moved = false;
        HashSet<int> why = [];
        for (int changes = 0; changes < MostChanges; changes++)
        {
            Literal[] news =
            [
                .. matter.Order().SelectMany(state => _factsOf[state]).Distinct()
                    .SelectMany(fact => (Literal[])[Literal.Of(fact), Literal.Of(fact, true)]).Where(fact => !seen.Contains(fact)),
            ];
            if (!_queries.CanStepToAny(states, news.Select(_queries.FactAfterScan), required, Kept(place, matter)))
            {
                why.UnionWith(_queries.StatesThatMatter(states));
                break;
            }

            look(Go(place, _queries.ModelInputs(), 1));
            moved = true;
        }

        foreach (int clock in matter.Order().Where(IsClock))
        {
            Literal[] kept = [.. Kept(place, [clock])];
            Literal rises = _queries.AfterScan(_builder.Greater(Variable(clock), _builder.Constant(states[clock])));
            Literal falls = _queries.AfterScan(_builder.Less(Variable(clock), _builder.Constant(states[clock])));
            bool canRise = _queries.CanStepToAny(states, [rises], required, kept);
            if (!canRise)
            {
                why.UnionWith(_queries.StatesThatMatter(states));
            }

            if (canRise || (backToo && _queries.CanStepToAny(states, [falls], required, kept)))
            {
                ImmutableArray<long> inputs = _queries.ModelInputs();
                int scans = _run.Stride(inputs.AsSpan(), [.. states], int.MaxValue);
                Place next = Go(place, inputs, Math.Max(1, scans - 1));
                look(next);
                if (GoOn(next, inputs, clock, meanwhile) is { } later)
                {
                    look(later);
                }

                moved = true;
            }
        }

        return moved ? null : why;
    }

    /// <summary>Holds the same inputs for as long as the clock runs, and as what is to be kept is.</summary>
    private Place? GoOn(Place place, ImmutableArray<long> inputs, int clock, Expression? meanwhile)
    {
        AffineScan? kept = meanwhile is null ? null : new AffineScan([meanwhile]);
        long[] states = [.. place.States];
        long[] last = [.. states];
        long scans = 0;
        for (int strides = 0; strides < MostStrides; strides++)
        {
            int some = _run.Stride(inputs.AsSpan(), states, int.MaxValue / 2);
            kept?.Evaluate([], states);
            bool goesOn = states[clock] > last[clock] && _run.KeptAssumptions && (kept is null || kept.Value(kept.PlaceOf(meanwhile!)) != 0);
            if (!goesOn || scans + some > int.MaxValue / 2)
            {
                break;
            }

            states.CopyTo(last, 0);
            scans += some;
        }

        return scans == 0 ? null : new Place(last, place, new TraceSegment(inputs, (int)scans), place.Scans + scans);
    }

    /// <summary>A place is kept for every goal that it is the first to reach, and for others as one more start.</summary>
    private bool Arrive(Place? place)
    {
        if (place is null)
        {
            return false;
        }

        // What units show each other comes a scan late: a little later is one more place to start from.
        _arrivals.AddRange([place, Go(place, place.By.Inputs, ScansUntilShown)]);
        bool[] values = _facts.Values(place.States);
        bool[] before = _facts.Values(place.From!.States);
        for (int goal = 0; goal < _goals.Length; goal++)
        {
            if (FactTable.Satisfies(values, _reached[goal]) && !FactTable.Satisfies(before, _reached[goal]))
            {
                _ways[goal].Add(place);
            }
        }

        return true;
    }

    private bool IsClock(int state) => _system.States[state].Variable is { Sort: Sort.Integer } variable && variable.Range.Maximum - variable.Range.Minimum > LargestEnumeration;

    /// <summary>What is so in the place, but for facts about the states that are to change.</summary>
    private IEnumerable<Literal> Kept(Place place, IEnumerable<int> changing)
    {
        HashSet<int> free = [.. changing.SelectMany(state => _factsOf[state])];
        return _facts.Values(place.States).Select((value, fact) => Literal.Of(fact, !value)).Where(literal => !free.Contains(literal.Variable));
    }

    private static bool IsSo(Place place, Expression overStates)
    {
        AffineScan scan = new([overStates]);
        scan.Evaluate([], place.States);
        return scan.Value(scan.PlaceOf(overStates)) != 0;
    }

    private Expression Variable(int state) => _builder.Variable(_system.States[state].Variable);

    private Place Go(Place from, ImmutableArray<long> inputs, int scans)
    {
        long[] states = [.. from.States];
        for (int left = scans; left > 0;)
        {
            left -= _run.Stride(inputs.AsSpan(), states, left);
        }

        return new Place(states, from, new TraceSegment(inputs, scans), from.Scans + scans);
    }

    private static List<TraceSegment> Way(Place place)
    {
        Stack<TraceSegment> backwards = new();
        for (Place? at = place; at?.From is not null; at = at.From)
        {
            backwards.Push(at.By);
        }

        List<TraceSegment> way = [];
        foreach (TraceSegment segment in backwards)
        {
            SearchRun.Append(way, segment.Inputs, segment.Scans);
        }

        return way;
    }

    private sealed class Place(long[] states, Place? from, TraceSegment by, long scans)
    {
        public long[] States => states;

        public Place? From => from;

        public TraceSegment By => by;

        public long Scans => scans;
    }
}
