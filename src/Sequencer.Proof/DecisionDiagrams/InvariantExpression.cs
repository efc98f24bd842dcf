using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;

namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>
/// A set of states as an expression: each node of the diagram is a choice by one bit, nodes that the diagram shares are shared.
/// A bit of an integer is whether what the higher bits leave of it is at least the bit's worth, so that all stays linear.
/// </summary>
internal static class InvariantExpression
{
    private const int MostNodes = 20_000;

    /// <summary>A bit of an integer with no more values is the list of the values that have it: solvers find that easier.</summary>
    private const int MostValuesNamed = 32;

    /// <exception cref="DiagramLimitException">The diagram has more nodes than a certificate should.</exception>
    public static Expression Of(DiagramSystem system, int set, ExpressionBuilder builder)
    {
        Dictionary<int, Expression> bits = [];
        foreach (StateVariable state in system.System.States)
        {
            AddBits(system, state.Variable, builder, bits);
        }

        Diagrams diagrams = system.Diagrams;
        if (diagrams.Size([set]) is var size && size > MostNodes)
        {
            throw new DiagramLimitException(FormattableString.Invariant($"the invariant would have had {size} choices"));
        }

        Dictionary<int, Expression> known = new() { [Diagrams.True >> 1] = builder.True };
        foreach (int edge in diagrams.InOrder([set]))
        {
            known[edge >> 1] = builder.IfThenElse(bits[diagrams.LevelOf(edge)], Meaning(diagrams.High(edge)), Meaning(diagrams.Low(edge)));
        }

        return Meaning(set);

        Expression Meaning(int edge) => (edge & 1) == 0 ? known[edge >> 1] : builder.Not(known[edge >> 1]);
    }

    private static IEnumerable<long> Values(Variable state)
    {
        for (long value = state.Range.Minimum; value <= state.Range.Maximum; value++)
        {
            yield return value;
        }
    }

    private static void AddBits(DiagramSystem system, Variable state, ExpressionBuilder builder, Dictionary<int, Expression> bits)
    {
        BitVector vector = system.Bits(state);
        Expression left = builder.Variable(state);
        if (state.Sort == Sort.Boolean)
        {
            Add(0, left);
            return;
        }

        if (state.Range.Maximum - state.Range.Minimum < MostValuesNamed)
        {
            for (int place = 0; place < vector.Width; place++)
            {
                int at = place;
                Add(place, builder.Or(Values(state).Where(value => ((value >> at) & 1) != 0).Select(value => builder.Equal(left, builder.Constant(value)))));
            }

            return;
        }

        Expression negative = builder.Less(left, builder.Constant(0L));
        Add(vector.Width - 1, negative);
        left = builder.Add(left, builder.IfThenElse(negative, builder.Constant(1L << (vector.Width - 1)), builder.Constant(0L)));
        for (int place = vector.Width - 2; place >= 0; place--)
        {
            Expression worth = builder.Constant(1L << place);
            Expression isSet = builder.GreaterOrEqual(left, worth);
            Add(place, isSet);
            left = builder.IfThenElse(isSet, builder.Subtract(left, worth), left);
        }

        void Add(int place, Expression meaning)
        {
            if (vector[place].Code >> 1 != 0)
            {
                bits.Add(system.Diagrams.LevelOf(vector[place].Code), meaning);
            }
        }
    }
}
