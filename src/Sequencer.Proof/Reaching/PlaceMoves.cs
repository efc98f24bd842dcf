using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Reaching;

/// <summary>From one place to others: by inputs that change what is asked for and as little else as can be, and by clocks that run.</summary>
internal sealed class PlaceMoves
{
    private const int MostChanges = 12;
    private const int MostStrides = 2_000;
    private const int LargestEnumeration = 12;

    private readonly TransitionSystem _system;
    private readonly ExpressionBuilder _builder;
    private readonly FactTable _facts;
    private readonly StepQueries _queries;
    private readonly SearchRun _run;
    private readonly ILookup<int, int> _factsOf;

    public PlaceMoves(TransitionSystem system, ExpressionBuilder builder, FactTable facts, StepQueries queries)
    {
        _system = system;
        _builder = builder;
        _facts = facts;
        _queries = queries;
        Expression assumed = builder.And(system.Assumptions.Select(assumption => assumption.Holds));
        _run = new SearchRun(system, assumed, system.Requirements[0].Holds, facts.Facts);
        _factsOf = Enumerable.Range(0, facts.Count).SelectMany(fact => facts.Support(fact).Select(state => (state, fact))).ToLookup(pair => pair.state, pair => pair.fact);
    }

    /// <summary>
    /// Looks at places in which something that matters is otherwise: one scan away with a fact that is new, or a clock's run away.
    /// Where there is none, the states that stand in the way of that. A clock runs back only where <paramref name="backToo"/>.
    /// </summary>
    public HashSet<int>? Next(Place place, HashSet<int> matter, Expression[] meanwhile, HashSet<Literal> seen, bool backToo, Action<Place> look)
    {
        ImmutableArray<long> states = [.. place.States];
        Literal[] required = [.. meanwhile.Select(_queries.AfterScan)];
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
                    foreach (Place further in Again(place, later, clock, meanwhile))
                    {
                        look(further);
                    }
                }

                moved = true;
            }
        }

        return moved ? null : why;
    }

    /// <summary>Holds the same inputs for as long as the clock runs, and as what is to be kept is.</summary>
    private Place? GoOn(Place place, ImmutableArray<long> inputs, int clock, Expression[] meanwhile)
    {
        AffineScan kept = new(meanwhile);
        long[] states = [.. place.States];
        long[] last = [.. states];
        long scans = 0;
        for (int strides = 0; strides < MostStrides; strides++)
        {
            int some = _run.Stride(inputs.AsSpan(), states, int.MaxValue / 2);
            kept.Evaluate([], states);
            bool goesOn = states[clock] > last[clock] && _run.KeptAssumptions && meanwhile.All(one => kept.Value(kept.PlaceOf(one)) != 0);
            if (!goesOn || scans + some > int.MaxValue / 2)
            {
                break;
            }

            states.CopyTo(last, 0);
            scans += some;
        }

        return scans == 0 ? null : new Place(last, place, new TraceSegment(inputs, (int)scans), place.Scans + scans);
    }

    /// <summary>
    /// A level that may rise only so fast takes many moves that are alike: the move once more and again, each time with the readings
    /// changed by as much as the last time, until something other than a clock is otherwise. Twice as many from one place told to the next.
    /// </summary>
    private IEnumerable<Place> Again(Place before, Place after, int clock, Expression[] meanwhile)
    {
        if (before.By.Inputs.IsEmpty)
        {
            yield break;
        }

        long[] readings = [.. _system.Inputs.Select((input, index) => input.Sort == Sort.Integer ? after.By.Inputs[index] - before.By.Inputs[index] : 0)];
        long gain = after.States[clock] - before.States[clock];
        if (gain <= 0 || readings.All(change => change == 0))
        {
            yield break;
        }

        Place last = after;
        for (int moves = 1; moves < MostStrides; moves++)
        {
            ImmutableArray<long> inputs = [.. last.By.Inputs.Select((value, index) => value + readings[index])];
            bool possible = _system.Inputs.Zip(inputs, (input, value) => input.Range.Contains(value)).All(inside => inside);
            Place? next = possible ? GoOn(Go(last, inputs, 1), inputs, clock, meanwhile) : null;
            if (next is null || next.States[clock] < last.States[clock] + gain)
            {
                break;
            }

            bool alike = !_system.States.Where((_, state) => !IsClock(state) && next.States[state] != last.States[state]).Any();
            last = next;
            if (!alike || (moves & (moves - 1)) == 0)
            {
                yield return last;
            }

            if (!alike)
            {
                yield break;
            }
        }

        yield return last;
    }

    /// <summary>An integer that is no small enumeration.</summary>
    public bool IsClock(int state) => _system.States[state].Variable is { Sort: Sort.Integer } variable && variable.Range.Maximum - variable.Range.Minimum > LargestEnumeration;

    /// <summary>What is so in the place, but for facts about the states that are to change.</summary>
    public IEnumerable<Literal> Kept(Place place, IEnumerable<int> changing)
    {
        HashSet<int> free = [.. changing.SelectMany(state => _factsOf[state])];
        return _facts.Values(place.States).Select((value, fact) => Literal.Of(fact, !value)).Where(literal => !free.Contains(literal.Variable));
    }

    /// <summary>Whether the fact about states alone is so in the place.</summary>
    public static bool IsSo(Place place, Expression overStates)
    {
        AffineScan scan = new([overStates]);
        scan.Evaluate([], place.States);
        return scan.Value(scan.PlaceOf(overStates)) != 0;
    }

    private Expression Variable(int state) => _builder.Variable(_system.States[state].Variable);

    /// <summary>Holds the inputs for so many scans.</summary>
    public Place Go(Place from, ImmutableArray<long> inputs, int scans)
    {
        long[] states = [.. from.States];
        for (int left = scans; left > 0;)
        {
            left -= _run.Stride(inputs.AsSpan(), states, left);
        }

        return new Place(states, from, new TraceSegment(inputs, scans), from.Scans + scans);
    }
}
