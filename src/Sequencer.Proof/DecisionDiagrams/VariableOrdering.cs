using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>
/// A place for each bit of inputs and states before anything is built: bits move to the middle of the gates that they
/// have to do with, over and over, and the arrangement with the shortest links wins (Aloul, Markov and Sakallah, "FORCE: a fast
/// and easy-to-implement variable-ordering heuristic", GLSVLSI 2003). A state's bit after the scan comes right below the one before.
/// An input that most states read comes first of all: below it the scan falls into cases that each change little.
/// </summary>
/// <param name="Inputs">Levels of the inputs' bits, in the order in which an encoding asks for them.</param>
/// <param name="States">Levels of the states' bits before the scan; the level below each is that of the bit after it.</param>
internal sealed record VariableOrdering(ImmutableArray<int> Inputs, ImmutableArray<int> States)
{
    private const int MostRounds = 200;
    private const int RoundsWithoutGain = 20;

    public int Levels => Inputs.Length + (2 * States.Length);

    /// <param name="system">Whose bits.</param>
    /// <param name="budget">Its limit of bits counts.</param>
    /// <param name="whole">
    /// Whether an integer's bits stay together. That is better for integers that take turns, and worse for clocks that run together.
    /// </param>
    /// <exception cref="DiagramLimitException">The states have more bits than the budget allows.</exception>
    public static VariableOrdering Of(TransitionSystem system, DiagramBudget budget, bool whole)
    {
        GateList gates = new();
        Literal[] inputs = Bits(system.Inputs, gates, out BitVector[] inputVectors);
        Literal[] states = Bits([.. system.States.Select(state => state.Variable)], gates, out BitVector[] stateVectors);
        if (states.Length > budget.Bits)
        {
            throw new DiagramLimitException(FormattableString.Invariant($"the states have {states.Length} bits, more than {budget.Bits}"));
        }

        Encoding encoding = new(gates, variable => (variable.Role == VariableRole.Input ? inputVectors : stateVectors)[variable.Index]);
        foreach (StateVariable state in system.States)
        {
            BitVector before = stateVectors[state.Variable.Index];
            BitVector after = encoding.Vector(state.Next);
            for (int place = 0; place < before.Width; place++)
            {
                gates.Link(before[place], after[place]);
            }
        }

        encoding.Boolean(system.Requirements[0].Holds);
        foreach (Assumption assumption in system.Assumptions)
        {
            encoding.Boolean(assumption.Holds);
        }

        int[] places = Arrange(gates.Count, gates.Links);
        if (whole)
        {
            KeepTogether([.. inputVectors, .. stateVectors], gates, places);
        }

        foreach (Variable input in ReadByMost(system))
        {
            foreach (Literal bit in inputVectors[input.Index].Bits)
            {
                places[bit.Variable] -= gates.Count;
            }
        }

        return Place(inputs, states, places);
    }

    /// <summary>Bits of a variable go to the middle of where they are, the highest first.</summary>
    private static void KeepTogether(IEnumerable<BitVector> vectors, GateList gates, int[] places)
    {
        int next = 0;
        foreach (Literal[] bits in vectors.Select(vector => vector.Bits.Where(bit => !gates.IsConstant(bit)).Reverse().ToArray())
            .Where(bits => bits.Length > 0).OrderBy(bits => bits.Average(bit => places[bit.Variable])).ToArray())
        {
            foreach (Literal bit in bits)
            {
                places[bit.Variable] = next++;
            }
        }
    }

    private static IEnumerable<Variable> ReadByMost(TransitionSystem system) => system.States
        .SelectMany(state => ExpressionGraph.Variables([state.Next]).Where(variable => variable.Role == VariableRole.Input))
        .GroupBy(input => input)
        .Where(readers => 2 * readers.Count() > system.States.Length)
        .Select(readers => readers.Key);

    private static Literal[] Bits(ImmutableArray<Variable> variables, GateList gates, out BitVector[] vectors)
    {
        List<Literal> bits = [];
        vectors = [.. variables.Select(variable =>
        {
            int before = gates.Count;
            BitVector vector = Encoding.Unknown(gates, variable);
            bits.AddRange(vector.Bits.Where(bit => bit.Variable >= before));
            return vector;
        })];
        return [.. bits];
    }

    private static VariableOrdering Place(Literal[] inputs, Literal[] states, int[] places)
    {
        int[] inputLevels = new int[inputs.Length];
        int[] stateLevels = new int[states.Length];
        int level = 0;
        foreach (int bit in Enumerable.Range(0, inputs.Length + states.Length).OrderBy(bit => places[(bit < inputs.Length ? inputs[bit] : states[bit - inputs.Length]).Variable]))
        {
            if (bit < inputs.Length)
            {
                inputLevels[bit] = level++;
            }
            else
            {
                stateLevels[bit - inputs.Length] = level;
                level += 2;
            }
        }

        return new VariableOrdering([.. inputLevels], [.. stateLevels]);
    }

    private static int[] Arrange(int count, IReadOnlyList<int[]> links)
    {
        int[] places = [.. Enumerable.Range(0, count)];
        int[] best = [.. places];
        int[] order = [.. places];
        double[] wishes = new double[count];
        int[] pullers = new int[count];
        long shortest = Length(places, links);
        for (int round = 0, since = 0; round < MostRounds && since < RoundsWithoutGain; round++, since++)
        {
            Array.Clear(wishes);
            Array.Clear(pullers);
            foreach (int[] link in links)
            {
                double centre = 0;
                foreach (int bit in link)
                {
                    centre += places[bit];
                }

                foreach (int bit in link)
                {
                    wishes[bit] += centre / link.Length;
                    pullers[bit]++;
                }
            }

            for (int bit = 0; bit < count; bit++)
            {
                wishes[bit] = pullers[bit] == 0 ? places[bit] : wishes[bit] / pullers[bit];
                order[bit] = bit;
            }

            Array.Sort(order, (left, right) => wishes[left] != wishes[right] ? wishes[left].CompareTo(wishes[right]) : places[left].CompareTo(places[right]));
            int[] before = [.. places];
            for (int place = 0; place < count; place++)
            {
                places[order[place]] = place;
            }

            if (before.AsSpan().SequenceEqual(places))
            {
                break;
            }

            long length = Length(places, links);
            if (length < shortest)
            {
                (shortest, since) = (length, 0);
                places.CopyTo(best, 0);
            }
        }

        return best;
    }

    private static long Length(int[] places, IReadOnlyList<int[]> links)
    {
        long length = 0;
        foreach (int[] link in links)
        {
            int lowest = int.MaxValue;
            int highest = 0;
            foreach (int bit in link)
            {
                lowest = Math.Min(lowest, places[bit]);
                highest = Math.Max(highest, places[bit]);
            }

            length += highest - lowest;
        }

        return length;
    }
}
