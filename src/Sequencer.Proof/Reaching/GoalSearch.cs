using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Real runs that look for goals, each from where a goal before it was reached. Where one is not found so, from places that other
/// goals have shown: what it waits for is brought about, or it is climbed to from where that is so already. It proves nothing.
/// </summary>
internal sealed class GoalSearch
{
    private const int MostStarts = 6;
    private const int MostOthers = 12;
    private const int MostMisses = 2;
    private const int ScansUntilShown = 2;
    private const int MostIdleAtAnyTime = 20;
    private const int MostTimesAlike = 3;
    private const int MostClimbs = 40;

    private readonly ImmutableArray<Goal> _goals;
    private readonly ExpressionBuilder _builder;
    private readonly FactTable _facts;
    private readonly PlaceMoves _moves;
    private readonly Pursuit _pursuit;
    private readonly GoalChains _chains;
    private readonly Place _start;
    private readonly int _firstMemory;
    private readonly ImmutableArray<Expression> _memory;
    private readonly Literal[] _reached;
    private readonly ImmutableArray<Expression> _meanwhile;
    private readonly List<Place>[] _ways;
    private readonly List<Place> _arrivals = [];
    private readonly List<Change> _changes = [];
    private readonly HashSet<(int Goal, Place From)> _tried = [];
    private readonly int[] _othersTried;
    private readonly int[] _otherwiseTried;

    public GoalSearch(GoalSystem goals, Budget budget)
    {
        TransitionSystem system = goals.Slice.System;
        _goals = goals.Goals;
        _builder = goals.Slice.Builder;
        _facts = FactHarvest.Collect(system, _builder);
        StepQueries queries = new(system, _facts, budget);
        _moves = new PlaceMoves(system, _builder, _facts, queries);
        _start = new Place([.. SearchRun.InitialStates(system)], null, new TraceSegment([], 0), 0);
        _firstMemory = goals.FirstMemory;
        _memory = [.. _goals.Select((_, goal) => _builder.Variable(system.States[_firstMemory + goal].Variable))];
        _reached = [.. _memory.Select(_facts.LiteralOf)];
        _meanwhile = goals.Meanwhile;
        _ways = [.. _goals.Select(_ => new List<Place>())];
        _chains = new GoalChains(_goals, _meanwhile, _ways);
        _pursuit = new Pursuit(_facts, queries, _moves, _reached, new BatchCopies(system), [.. _goals.Select((_, goal) => Stretches(goal))]);
        _othersTried = new int[_goals.Length];
        _otherwiseTried = new int[_goals.Length];

        // A goal that may come at any time, as the first step after a stop, keeps nothing.
        ImmutableArray<Expression> Stretches(int goal) =>
            _meanwhile[goal].IsTrue ? [] : [.. _chains.Before(goal).Prepend(goal).Select(one => _meanwhile[one]).Where(stretch => !stretch.IsTrue)];
    }

    /// <summary>Goes on until no goal is left whose way there is known so far.</summary>
    public void Run(Action<int> report)
    {
        while (FindMore(report))
        {
            // From what was found now others may be found.
        }
    }

    /// <summary>The last of the goals, which may come at any time, from the start and from wherever another goal was reached.</summary>
    public bool PursueLast()
    {
        int last = _goals.Length - 1;
        return _ways[last].Count > 0 || PursueAtAnyTime(last, _start)
            || UntriedArrivals(last).OrderBy(place => place.Scans).ToArray().Any(place => PursueAtAnyTime(last, place)) || BringAboutAtAnyTime(last);
    }

    /// <summary>A goal that may come at any time, first from where the fewest states stand in its way.</summary>
    public bool PursueFromNearest(int goal) =>
        _ways[goal].Count > 0 || UntriedArrivals(goal).Append(_start).OrderBy(place => _pursuit.InTheWay(goal, place).Count).ThenBy(place => place.Scans).ToArray()
            .Any(place => PursueAtAnyTime(goal, place));

    private IEnumerable<Place> UntriedArrivals(int goal) => _arrivals.Where(place => _tried.Add((goal, place)));

    private bool PursueAtAnyTime(int goal, Place from) => Arrive(_pursuit.Of(goal, [from], null, MostIdleAtAnyTime)) || ArriveOtherwise(goal);

    /// <summary>From late in a batch to what another goal has brought about before, as the next batch would, and on from there.</summary>
    public bool BringAboutAtAnyTime(int goal)
    {
        Dictionary<(int Goal, string Matter), int> tried = [];
        int climbs = 0;
        foreach (Place place in _arrivals.OrderByDescending(place => place.Scans).ToArray())
        {
            HashSet<int> matter = _pursuit.InTheWay(goal, place);
            string key = string.Join(' ', matter.Order());
            foreach (int other in _changes.Where(change => change.Goal != goal && change.Brings(matter, place)).OrderBy(change => change.After.Scans).Select(change => change.Goal).Distinct().ToArray())
            {
                int times = tried.GetValueOrDefault((other, key));
                tried[(other, key)] = times + 1;
                if (times >= MostTimesAlike || climbs >= MostClimbs)
                {
                    continue;
                }

                climbs++;
                if (Climb(place, other) is { } with && Arrive(with) && Arrive(_pursuit.Of(goal, [with.At, Later(with.At)], null, MostIdleAtAnyTime)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>With other settings from the start, where that was all that was in the way.</summary>
    private bool ArriveOtherwise(int goal)
    {
        IEnumerable<TraceSegment>[] ways = [.. _pursuit.Otherwise(goal).Skip(_otherwiseTried[goal])];
        _otherwiseTried[goal] += ways.Length;
        return ways.Any(way => Arrive(_pursuit.Of(goal, [way.Aggregate(_start, (place, segment) => _moves.Go(place, segment.Inputs, segment.Scans))], null, MostIdleAtAnyTime)));
    }

    /// <summary>The cheapest that still finds something.</summary>
    private bool FindMore(Action<int> report)
    {
        return AnyGoal(PursueFromWays) || AnyGoal(BringAbout) || AnyGoal(ClimbFromFurtherBack) || AnyGoal(ClimbFromPromising);

        bool AnyGoal(Func<int, bool> find)
        {
            bool found = false;
            for (int goal = 0; goal < _goals.Length; goal++)
            {
                found |= _ways[goal].Count == 0 && find(goal);
                report(_ways.Count(ways => ways.Count > 0));
            }

            return found;
        }
    }

    /// <summary>From where a goal before it was reached.</summary>
    private bool PursueFromWays(int goal)
    {
        IEnumerable<int> further = _chains.Before(goal).SelectMany(earlier => _chains.Before(earlier)).Except(_chains.Before(goal));
        IEnumerable<Place> known = _chains.Before(goal).IsEmpty ? [_start] : _chains.Before(goal).Concat(further).SelectMany(earlier => _ways[earlier]);
        Place[] from = Untried(goal, known.OrderBy(place => place.Scans));
        return from.Length > 0 && Arrive(_pursuit.Of(goal, from));
    }

    /// <summary>Where a goal waits in its place for something that a way to another goal has brought about before: with that.</summary>
    private bool BringAbout(int goal)
    {
        bool found = false;
        for (bool further = _chains.IsNext(goal); further && _ways[goal].Count == 0;)
        {
            (HashSet<int> matter, Place? at) = _pursuit.InTheWay(goal);
            Change[] awaited = at is null ? [] : [.. _changes.Where(change => change.Brings(matter, at)).OrderBy(change => change.After.Scans)];
            further = false;
            if (at is not null && _pursuit.Stretch(goal, at) is { } kept && !(found |= GoOnWhereItIsSo(goal, awaited)))
            {
                further = BringAbout(goal, awaited, at, kept, ref found);
            }
        }

        return found;
    }

    /// <summary>From where it was brought about: if the goal's own unit stands ready there at once, else once it has come so far, with the other waiting.</summary>
    private bool GoOnWhereItIsSo(int goal, Change[] awaited)
    {
        Place[] ready = Untried(goal, awaited.Select(change => change.After).Where(place => _pursuit.Stretch(goal, place) is not null));
        return (ready.Length > 0 && Arrive(_pursuit.Of(goal, ready)))
            || awaited.Where(change => PlaceMoves.IsSo(change.After, _meanwhile[change.Goal])).Where(change => _tried.Add((goal, change.After))).Take(MostStarts)
                .Any(change => Arrive(Climb(change.After, goal, _builder.Or(_meanwhile[change.Goal], _memory[goal]))));
    }

    /// <summary>The other's way once more from where the goal waits, and without leaving that place. True if something else stands in the way now.</summary>
    private bool BringAbout(int goal, Change[] awaited, Place at, Expression kept, ref bool found)
    {
        foreach (int other in awaited.Select(change => change.Goal).Distinct().TakeWhile(_ => _othersTried[goal] < MostOthers))
        {
            _othersTried[goal]++;
            if (Climb(at, other, _builder.Or(kept, _memory[goal])) is { } with)
            {
                found |= Arrive(with);
                found |= Arrive(_pursuit.Of(goal, [with.At, Later(with.At)]));
                if (!ReferenceEquals(_pursuit.InTheWay(goal).At, at))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>What has come to a goal some way back by another way may go on from there.</summary>
    private bool ClimbFromFurtherBack(int goal) =>
        Untried(goal, _chains.FurtherBack(goal).SelectMany(before => _ways[before].OrderBy(place => place.Scans))).Any(place => Arrive(Climb(place, goal)));

    /// <summary>From any place in which something is otherwise that stood in the way.</summary>
    private bool ClimbFromPromising(int goal)
    {
        (HashSet<int> matter, Place? at) = _pursuit.InTheWay(goal);
        IEnumerable<Place> promising = at is null ? [] : _arrivals.Where(place => matter.Any(state => place.States[state] != at.States[state]));
        return Untried(goal, promising.OrderBy(place => _pursuit.Stretch(goal, place) is null ? 1 : 0).ThenBy(place => place.Scans))
            .Any(place => Arrive(Climb(place, goal)) && _ways[goal].Count > 0);
    }

    private Place[] Untried(int goal, IEnumerable<Place> places) => [.. places.Where(place => _tried.Add((goal, place))).Take(MostStarts)];

    /// <summary>The same place, as if no goal had been reached on the way to it: what has been is to be again.</summary>
    private Place Forget(Place place)
    {
        long[] states = [.. place.States];
        Array.Clear(states, _firstMemory, _goals.Length);
        return new Place(states, place, new TraceSegment(place.By.Inputs, 0), place.Scans);
    }

    /// <summary>What units show each other comes a scan late.</summary>
    private Place Later(Place place) => _moves.Go(place, place.By.Inputs, ScansUntilShown);

    /// <summary>From a place that is on no way to the goal yet: one after the other the goals on a way to it, then the goal.</summary>
    private Arrival? Climb(Place from, int goal, Expression? kept = null)
    {
        int[] goals = _chains.To(goal, from);
        Place start = Forget(from);
        Place place = start;
        int misses = 0;
        foreach (int next in goals[..^1].TakeWhile(_ => misses < MostMisses))
        {
            // A step that is passed over this time is left out.
            Arrival? arrival = _pursuit.Of(next, [place], kept);
            place = arrival?.At ?? place;
            misses = arrival is null ? misses + 1 : 0;
        }

        return misses < MostMisses && _pursuit.Of(goal, [place], kept) is { } there ? new Arrival(start, there.At) : null;
    }

    /// <summary>Whether the goal comes first of all, or after one that is reached.</summary>
    public bool IsNext(int goal) => _chains.IsNext(goal);

    /// <summary>Takes in a run found by others, from the initial state to a goal.</summary>
    public void Take(Trace run) => Arrive(new Arrival(_start, run.Segments.Aggregate(_start, (place, segment) => _moves.Go(place, segment.Inputs, segment.Scans))));

    /// <summary>The run found that reaches the goal in its last scan; null without one.</summary>
    public IReadOnlyList<TraceSegment>? WayTo(int goal) => _ways[goal].MinBy(place => place.Scans)?.Way();

    /// <summary>A place is kept for every goal that it is the first to reach, and for others as one more start.</summary>
    private bool Arrive(Arrival? arrival)
    {
        if (arrival is null)
        {
            return false;
        }

        Place place = arrival.At;
        Place later = Later(place);
        _arrivals.AddRange([place, later]);
        bool[] values = _facts.Values(place.States);
        bool[] before = _facts.Values(arrival.From.States);
        for (int goal = 0; goal < _goals.Length; goal++)
        {
            if (FactTable.Satisfies(values, _reached[goal]) && !FactTable.Satisfies(before, _reached[goal]))
            {
                _ways[goal].Add(place);
                _changes.Add(new Change(goal, arrival.From, later));
            }
        }

        return true;
    }
}
