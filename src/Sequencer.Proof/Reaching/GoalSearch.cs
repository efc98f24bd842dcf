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
    private const int MostStarts = 6;
    private const int MostCauses = 5;
    private const int ScansUntilShown = 2;

    private readonly FactTable _facts;
    private readonly StepQueries _queries;
    private readonly PlaceMoves _moves;
    private readonly ImmutableArray<long> _start;
    private readonly ImmutableArray<Goal> _goals;
    private readonly Literal[] _reached;
    private readonly ImmutableArray<Expression>[] _stretches;
    private readonly ImmutableArray<int>[] _before;
    private readonly List<Place>[] _ways;
    private readonly List<Place> _arrivals = [];
    private readonly (HashSet<int> Matter, Place? At)[] _inTheWay;
    private int _looked;

    public GoalSearch(GoalSystem goals, Budget budget)
    {
        TransitionSystem system = goals.Slice.System;
        ExpressionBuilder builder = goals.Slice.Builder;
        _facts = FactHarvest.Collect(system, builder);
        _queries = new StepQueries(system, _facts, budget);
        _moves = new PlaceMoves(system, builder, _facts, _queries);
        _start = SearchRun.InitialStates(system);
        _goals = goals.Goals;
        _reached = [.. Enumerable.Range(0, _goals.Length).Select(goal => _facts.LiteralOf(builder.Variable(system.States[goals.FirstMemory + goal].Variable)))];
        Dictionary<string, int> numbers = Enumerable.Range(0, _goals.Length).ToDictionary(goal => _goals[goal].Name, goal => goal, StringComparer.Ordinal);
        _before = [.. _goals.Select(goal => goal.After.Where(numbers.ContainsKey).Select(name => numbers[name]).ToImmutableArray())];
        _stretches = [.. Enumerable.Range(0, _goals.Length).Select(goal => _before[goal].Prepend(goal).Select(one => goals.Meanwhile[one]).Where(stretch => !stretch.IsTrue).ToImmutableArray())];
        _ways = [.. _goals.Select(_ => new List<Place>())];
        _inTheWay = [.. _goals.Select(_ => (new HashSet<int>(), (Place?)null))];
    }

    /// <summary>Goes on until no goal is left whose way there is known so far.</summary>
    public void Run(Action<int> report)
    {
        Place start = new([.. _start], null, new TraceSegment([], 0), 0);
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
                    .. Promising(goal).OrderBy(place => _stretches[goal].Any(stretch => PlaceMoves.IsSo(place, stretch)) ? 0 : 1).ThenBy(place => place.Scans)
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
    public IReadOnlyList<TraceSegment>? WayTo(int goal) => _ways[goal].Count == 0 ? null : _ways[goal][0].Way();

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
            if (_queries.CanStepToAny(states, [_queries.FactAfterScan(_reached[goal])], [], _moves.Kept(place, [])))
            {
                return _moves.Go(place, _queries.ModelInputs(), 1);
            }

            HashSet<int> matter = _queries.StatesThatMatter(states);
            if (count == 0)
            {
                _inTheWay[goal] = ([.. matter], place);
            }

            idle = IsFurther(place, matter, furthest) ? 0 : idle + 1;
            Expression? meanwhile = _stretches[goal].FirstOrDefault(stretch => PlaceMoves.IsSo(place, stretch));
            for (int causes = 0; causes < MostCauses && _moves.Next(place, matter, meanwhile, seen, causes == MostCauses - 1, Look) is { } why; causes++)
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
        foreach (int clock in matter.Where(_moves.IsClock))
        {
            if (!furthest.TryGetValue(clock, out long known) || place.States[clock] > known)
            {
                furthest[clock] = place.States[clock];
                further = true;
            }
        }

        return further;
    }

    /// <summary>A place is kept for every goal that it is the first to reach, and for others as one more start.</summary>
    private bool Arrive(Place? place)
    {
        if (place is null)
        {
            return false;
        }

        // What units show each other comes a scan late: a little later is one more place to start from.
        _arrivals.AddRange([place, _moves.Go(place, place.By.Inputs, ScansUntilShown)]);
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
}
