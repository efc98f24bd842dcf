using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>Linear integer arithmetic in gates. A result's width is that of the range it is known to lie in.</summary>
internal static class Arithmetic
{
    public static BitVector Constant(Gates gates, long value)
    {
        int width = BitVector.WidthFor(new IntegerRange(value, value));
        return Build(width, place => gates.Constant(((value >> Math.Min(place, 63)) & 1) == 1));
    }

    /// <summary>A new unknown within the range.</summary>
    public static BitVector Unknown(Gates gates, IntegerRange range)
    {
        int width = BitVector.WidthFor(range);
        Literal sign = range.Minimum >= 0 ? gates.False : range.Maximum < 0 ? gates.True : gates.NewVariable();
        BitVector vector = Build(width, place => place == width - 1 ? sign : gates.NewVariable());
        gates.Demand(LessOrEqual(gates, Constant(gates, range.Minimum), vector));
        gates.Demand(LessOrEqual(gates, vector, Constant(gates, range.Maximum)));
        return vector;
    }

    public static BitVector Add(Gates gates, BitVector left, BitVector right, int width)
    {
        ImmutableArray<Literal>.Builder bits = ImmutableArray.CreateBuilder<Literal>(width);
        Literal carry = gates.False;
        for (int place = 0; place < width; place++)
        {
            bits.Add(gates.ExclusiveOr(gates.ExclusiveOr(left[place], right[place]), carry));
            carry = gates.Majority(left[place], right[place], carry);
        }

        return new BitVector(bits.MoveToImmutable());
    }

    /// <summary>The product with a constant, modulo two to the width, as a sum of shifted copies.</summary>
    public static BitVector Scale(Gates gates, long factor, BitVector operand, int width)
    {
        ulong magnitude = factor < 0 ? (ulong)-factor : (ulong)factor;
        BitVector sum = Constant(gates, 0);
        for (int shift = 0; shift < Math.Min(width, 64); shift++)
        {
            if (((magnitude >> shift) & 1) == 1)
            {
                int by = shift;
                BitVector shifted = Build(width, place => place < by ? gates.False : operand[place - by]);
                sum = Add(gates, sum, shifted, width);
            }
        }

        return factor < 0 ? Negate(gates, sum, width) : sum;
    }

    public static BitVector Choose(Gates gates, Literal condition, BitVector then, BitVector otherwise) =>
        Build(Math.Max(then.Width, otherwise.Width), place => gates.Choice(condition, then[place], otherwise[place]));

    public static Literal Equal(Gates gates, BitVector left, BitVector right) =>
        gates.And(Enumerable.Range(0, Math.Max(left.Width, right.Width)).Select(place => !gates.ExclusiveOr(left[place], right[place])));

    public static Literal LessOrEqual(Gates gates, BitVector left, BitVector right) => !Less(gates, right, left);

    /// <summary>From the lowest bit up: less below, unless this place decides; the sign decides the other way round.</summary>
    public static Literal Less(Gates gates, BitVector left, BitVector right)
    {
        int width = Math.Max(left.Width, right.Width);
        Literal less = gates.False;
        for (int place = 0; place < width; place++)
        {
            bool sign = place == width - 1;
            less = gates.Majority(sign ? left[place] : !left[place], sign ? !right[place] : right[place], less);
        }

        return less;
    }

    private static BitVector Negate(Gates gates, BitVector operand, int width) =>
        Add(gates, Build(width, place => !operand[place]), Constant(gates, 1), width);

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
