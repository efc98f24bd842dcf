using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>Linear integer arithmetic in gates. A result's width is that of the range it is known to lie in.</summary>
internal static class Arithmetic
{
    public static BitVector Constant(Circuit circuit, long value)
    {
        int width = BitVector.WidthFor(new IntegerRange(value, value));
        return Build(width, place => circuit.Constant(((value >> Math.Min(place, 63)) & 1) == 1));
    }

    /// <summary>A new unknown within the range.</summary>
    public static BitVector Unknown(Circuit circuit, IntegerRange range)
    {
        int width = BitVector.WidthFor(range);
        Literal sign = range.Minimum >= 0 ? circuit.False : range.Maximum < 0 ? circuit.True : circuit.Solver.NewVariable();
        BitVector vector = Build(width, place => place == width - 1 ? sign : circuit.Solver.NewVariable());
        circuit.Solver.AddClause(LessOrEqual(circuit, Constant(circuit, range.Minimum), vector));
        circuit.Solver.AddClause(LessOrEqual(circuit, vector, Constant(circuit, range.Maximum)));
        return vector;
    }

    public static BitVector Add(Circuit circuit, BitVector left, BitVector right, int width)
    {
        ImmutableArray<Literal>.Builder bits = ImmutableArray.CreateBuilder<Literal>(width);
        Literal carry = circuit.False;
        for (int place = 0; place < width; place++)
        {
            bits.Add(circuit.ExclusiveOr(circuit.ExclusiveOr(left[place], right[place]), carry));
            carry = circuit.Majority(left[place], right[place], carry);
        }

        return new BitVector(bits.MoveToImmutable());
    }

    /// <summary>The product with a constant, modulo two to the width, as a sum of shifted copies.</summary>
    public static BitVector Scale(Circuit circuit, long factor, BitVector operand, int width)
    {
        ulong magnitude = factor < 0 ? (ulong)-factor : (ulong)factor;
        BitVector sum = Constant(circuit, 0);
        for (int shift = 0; shift < Math.Min(width, 64); shift++)
        {
            if (((magnitude >> shift) & 1) == 1)
            {
                int by = shift;
                BitVector shifted = Build(width, place => place < by ? circuit.False : operand[place - by]);
                sum = Add(circuit, sum, shifted, width);
            }
        }

        return factor < 0 ? Negate(circuit, sum, width) : sum;
    }

    public static BitVector Choose(Circuit circuit, Literal condition, BitVector then, BitVector otherwise) =>
        Build(Math.Max(then.Width, otherwise.Width), place => circuit.Choice(condition, then[place], otherwise[place]));

    public static Literal Equal(Circuit circuit, BitVector left, BitVector right) =>
        circuit.And(Enumerable.Range(0, Math.Max(left.Width, right.Width)).Select(place => !circuit.ExclusiveOr(left[place], right[place])));

    public static Literal LessOrEqual(Circuit circuit, BitVector left, BitVector right) => !Less(circuit, right, left);

    /// <summary>From the lowest bit up: less below, unless this place decides; the sign decides the other way round.</summary>
    public static Literal Less(Circuit circuit, BitVector left, BitVector right)
    {
        int width = Math.Max(left.Width, right.Width);
        Literal less = circuit.False;
        for (int place = 0; place < width; place++)
        {
            bool sign = place == width - 1;
            less = circuit.Majority(sign ? left[place] : !left[place], sign ? !right[place] : right[place], less);
        }

        return less;
    }

    private static BitVector Negate(Circuit circuit, BitVector operand, int width) =>
        Add(circuit, Build(width, place => !operand[place]), Constant(circuit, 1), width);

    private static BitVector Build(int width, Func<int, Literal> bit)
    {
        ImmutableArray<Literal>.Builder bits = ImmutableArray.CreateBuilder<Literal>(width);
        for (int place = 0; place < width; place++)
        {
            bits.Add(bit(place));
        }

        return new BitVector(bits.MoveToImmutable());
    }
}
