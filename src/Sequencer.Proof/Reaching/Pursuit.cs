using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// Looks for one goal from given places. From a state the solver is asked for inputs that reach the goal in one scan. Where there
/// are none, its refusal names the states that stand in the way, and only those are changed: in one scan to a value not had before
/// in this search, or by letting their clocks run.
/// </summary>
internal sealed class Pursuit
{
    private const int MostPlaces = 1_000;
    private const int MostPlacesInAll = 6_000;
    private const int MostIdlePlaces = 60;
    private const int MostCauses = 5;
    private const int MostOtherwise = 12;

    private readonly FactTable _facts;
    private readonly StepQueries _queries;
    private readonly PlaceMoves _moves;
    private readonly Literal[] _reached;
    private readonly ImmutableArray<Expression>[] _stretches;
    private readonly (HashSet<int> Matter, Place? At)[] _inTheWay;
    private readonly BatchCopies _copies;
    private readonly List<(int Goal, Place At, ImmutableDictionary<int, long> Values)> _otherwise = [];
    private int _looked;

    /// <param name="facts">What a place is told from another by.</param>
    /// <param name="queries">Asks for inputs.</param>
    /// <param name="moves">From place to place.</param>
    /// <param name="reached">For each goal the fact that it has been reached.</param>
    /// <param name="copies">What is settled at the start of a batch.</param>
    /// <param name="stretches">For each goal the facts of which one is best kept shortly before it.</param>
    public Pursuit(FactTable facts, StepQueries queries, PlaceMoves moves, Literal[] reached, BatchCopies copies, ImmutableArray<Expression>[] stretches)
    {
        _facts = facts;
        _queries = queries;
        _moves = moves;
        _reached = reached;
        _copies = copies;
        _stretches = stretches;
        _inTheWay = [.. reached.Select(_ => (new HashSet<int>(), (Place?)null))];
    }

    /// <summary>The states that stood in the way of the goal, and where; best where it was on its last stretch.</summary>
    public (HashSet<int> Matter, Place? At) InTheWay(int goal) => _inTheWay[goal];

    /// <summary>The states that stand in the way of the goal in the next scan from a place; none where nothing does.</summary>
    public HashSet<int> InTheWay(int goal, Place place)
    {
        ImmutableArray<long> states = [.. place.States];
        return _queries.CanStepToAny(states, [_queries.FactAfterScan(_reached[goal])], [], []) ? [] : Unsettled(goal, place, states, _queries.StatesThatMatter(states));
    }

    /// <summary>The runs to places from which the goal could be reached at once if the batch had been started with other settings: with those.</summary>
    public IEnumerable<IEnumerable<TraceSegment>> Otherwise(int goal) =>
        _otherwise.Where(one => one.Goal == goal).ToArray().Select(one => _copies.With(one.At.Way(), one.Values));

    /// <summary>What is best kept so for the goal, if the place is on its last stretch.</summary>
    public Expression? Stretch(int goal, Place place) => _stretches[goal].FirstOrDefault(stretch => PlaceMoves.IsSo(place, stretch));

    /// <summary>
    /// From any of the places to the goal, with what is to be kept true after every move. The last place looked at goes first;
    /// what no place so far has shown keeps it from going in circles. Null where it is given up.
    /// </summary>
    public Arrival? Of(int goal, Place[] from, Expression? kept = null, int mostIdle = MostIdlePlaces)
    {
        Stack<Place> open = new();
        HashSet<Literal> seen = [];
        Dictionary<int, long> furthest = [];
        foreach (Place place in from.Reverse())
        {
            Look(place);
        }

        int idle = 0;
        for (int count = 0; count < MostPlaces && _looked < MostPlacesInAll && idle < mostIdle && open.TryPop(out Place? place); count++)
        {
            _looked++;
            ImmutableArray<long> states = [.. place.States];
            Literal[] required = kept is null ? [] : [_queries.AfterScan(kept)];
            if (_queries.CanStepToAny(states, [_queries.FactAfterScan(_reached[goal])], required, _moves.Kept(place, [])))
            {
                return new Arrival(Origin(place, from), _moves.Go(place, _queries.ModelInputs(), 1));
            }

            HashSet<int> matter = _queries.StatesThatMatter(states);
            matter = Unsettled(goal, place, states, matter);
            Expression? stretch = Stretch(goal, place);
            if (count == 0 && (stretch is not null || _inTheWay[goal].At is null))
            {
                _inTheWay[goal] = ([.. matter], place);
            }

            idle = IsFurther(place, matter, furthest) ? 0 : idle + 1;
            Expression[] meanwhile = [.. new[] { stretch, kept }.OfType<Expression>()];
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

    /// <summary>What stands in the way besides settings. Where that is nothing, the place is noted with settings that would do.</summary>
    private HashSet<int> Unsettled(int goal, Place place, ImmutableArray<long> states, HashSet<int> matter)
    {
        if (!matter.Any(_copies.IsCopy) || _otherwise.Count(one => one.Goal == goal) >= MostOtherwise)
        {
            return matter;
        }

        if (_queries.ValuesThatWouldDo(states, _copies.All, _queries.FactAfterScan(_reached[goal])) is not { } values)
        {
            return _queries.StatesThatMatter(states);
        }

        _otherwise.Add((goal, place, values));
        return matter;
    }

    private static Place Origin(Place place, Place[] among)
    {
        Place at = place;
        while (!among.Contains(at) && at.From is { } before)
        {
            at = before;
        }

        return at;
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
}
