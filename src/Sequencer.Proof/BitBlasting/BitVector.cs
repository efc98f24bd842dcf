using System.Collections.Immutable;
using System.Numerics;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.BitBlasting;

/// <summary>An integer in two's complement, the lowest bit first, the sign last.</summary>
internal readonly record struct BitVector(ImmutableArray<Literal> Bits)
{
    public int Width => Bits.Length;

    /// <summary>The bit at a place, the sign repeated beyond the width.</summary>
    public Literal this[int place] => Bits[Math.Min(place, Bits.Length - 1)];

    /// <summary>The least width in two's complement that fits every value of the range.</summary>
    public static int WidthFor(IntegerRange range) => Math.Max(BitsFor(range.Minimum), BitsFor(range.Maximum)) + 1;

    /// <summary>The value in the model of the solver's last query.</summary>
    public long ModelValue(Solver solver)
    {
        long value = solver.ModelValue(Bits[^1]) ? -1 : 0;
        for (int place = Bits.Length - 2; place >= 0; place--)
        {
            value = (value << 1) | (solver.ModelValue(Bits[place]) ? 1L : 0L);
        }

        return value;
    }

    /// <summary>The literals that together say that the vector has the value.</summary>
    public IEnumerable<Literal> Fixed(long value)
    {
        for (int place = 0; place < Bits.Length; place++)
        {
            yield return Bits[place].NegatedIf(((value >> Math.Min(place, 63)) & 1) == 0);
        }
    }

    private static int BitsFor(long value) => 64 - BitOperations.LeadingZeroCount((ulong)(value < 0 ? ~value : value));
}
