using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Strengthening;

/// <summary>
/// Guesses that counts of one range are places in a queue, 0 for who is not in it: no two have one place, and where another count is
/// how many wait, the places taken are those from 1 to it. That is a permutation, which clauses and diagrams find only case by
/// case. What random runs break is not guessed; the largest inductive part of the rest is kept.
/// </summary>
internal static class QueuePlaces
{
    private const int Scans = 2_000;
    private const int LongestQueue = 64;

    /// <summary>Facts over the states that hold in every run that keeps the assumptions; none where nothing looks like a queue.</summary>
    public static ImmutableArray<Expression> Find(TransitionSystem system, ExpressionBuilder builder, int seed, Budget budget)
    {
        StateVariable[] counts = [.. system.States.Where(state => state.Variable is { Sort: Sort.Integer, Range: { Minimum: 0, Maximum: > 1 and <= LongestQueue } })];
        if (counts.Length < 3)
        {
            return [];
        }

        List<long[]> samples = Samples(system, seed);
        List<Expression> guesses = [];
        foreach (IGrouping<long, StateVariable> alike in counts.GroupBy(state => state.Variable.Range.Maximum).Where(alike => alike.Count() > 1))
        {
            StateVariable[] places = [.. alike.Select(first => Apart(first, alike, samples)).MaxBy(group => group.Count)!];
            if (places.Length > 1)
            {
                guesses.AddRange(NoneTwice(places, builder));
                guesses.AddRange(counts.Except(places).Where(length => Counts(length, places, samples)).SelectMany(length => Filled(length, places, builder)));
            }
        }

        return InvariantSelection.UnderAssumptions(system, guesses, budget);
    }

    /// <summary>States that random inputs lead to; a scan that breaks an assumption is not taken.</summary>
    private static List<long[]> Samples(TransitionSystem system, int seed)
    {
        Random random = new(seed);
        Interpreter interpreter = new(system, [.. system.Assumptions.Select(assumption => assumption.Holds)]);
        interpreter.Initialise();
        List<long[]> samples = [];
        for (int scan = 0; scan < Scans; scan++)
        {
            long[] before = interpreter.States.ToArray();
            foreach (Variable input in system.Inputs)
            {
                interpreter.Inputs[input.Index] = random.NextInt64(input.Range.Minimum, input.Range.Maximum + 1);
            }

            interpreter.Step();
            if (interpreter.Observed.Contains(0))
            {
                interpreter.SetStates(before);
            }
            else
            {
                samples.Add(interpreter.States.ToArray());
            }
        }

        return samples;
    }

    /// <summary>The first and, in their order, the others that never had one place with any of those before, and each was in the queue.</summary>
    private static List<StateVariable> Apart(StateVariable first, IEnumerable<StateVariable> alike, List<long[]> samples)
    {
        List<StateVariable> group = [];
        foreach (StateVariable state in alike.Where(other => other != first).Prepend(first))
        {
            if (samples.Exists(sample => sample[state.Variable.Index] > 0)
                && group.TrueForAll(other => samples.TrueForAll(sample => sample[state.Variable.Index] == 0 || sample[state.Variable.Index] != sample[other.Variable.Index])))
            {
                group.Add(state);
            }
        }

        return group;
    }

    private static bool Counts(StateVariable length, StateVariable[] places, List<long[]> samples) =>
        samples.TrueForAll(sample => sample[length.Variable.Index] == places.Count(place => sample[place.Variable.Index] > 0));

    private static IEnumerable<Expression> NoneTwice(StateVariable[] places, ExpressionBuilder builder) =>
        from first in Enumerable.Range(0, places.Length)
        from second in Enumerable.Range(first + 1, places.Length - first - 1)
        let one = builder.Variable(places[first].Variable)
        let other = builder.Variable(places[second].Variable)
        select builder.Or(builder.Equal(one, builder.Constant(0L)), builder.Not(builder.Equal(one, other)));

    /// <summary>So many are in the queue as the count says, none behind the last place, and each place up to it is somebody's.</summary>
    private static IEnumerable<Expression> Filled(StateVariable length, StateVariable[] places, ExpressionBuilder builder)
    {
        Expression count = builder.Variable(length.Variable);
        Expression[] each = [.. places.Select(place => builder.Variable(place.Variable))];
        yield return builder.Equal(count, builder.Add(each.Select(place =>
            builder.IfThenElse(builder.GreaterOrEqual(place, builder.Constant(1L)), builder.Constant(1L), builder.Constant(0L)))));
        foreach (Expression place in each)
        {
            yield return builder.LessOrEqual(place, count);
        }

        for (long taken = 1; taken <= places.Length; taken++)
        {
            Expression somebody = builder.Or(each.Select(place => builder.Equal(place, builder.Constant(taken))));
            yield return builder.Implies(builder.GreaterOrEqual(count, builder.Constant(taken)), somebody);
        }
    }
}
