using System.Numerics;

namespace Sequencer.Plant.Reaction;

/// <summary>Sums over the contents of a water. The lanes of a vector do what one number after the other would, to the last bit.</summary>
internal static class Amounts
{
    /// <summary>Adds so many times the amounts.</summary>
    public static void Add(Span<double> sums, double times, ReadOnlySpan<double> amounts)
    {
        int lane = 0;
        for (; lane <= amounts.Length - Vector<double>.Count; lane += Vector<double>.Count)
        {
            Span<double> target = sums[lane..];
            (new Vector<double>(target) + (times * new Vector<double>(amounts[lane..]))).CopyTo(target);
        }

        for (; lane < amounts.Length; lane++)
        {
            sums[lane] += times * amounts[lane];
        }
    }

    /// <summary>Takes a share of the amounts from one place and gives it to another that is apart from it.</summary>
    public static void Move(ReadOnlySpan<double> amounts, double share, Span<double> from, Span<double> to)
    {
        int lane = 0;
        for (; lane <= amounts.Length - Vector<double>.Count; lane += Vector<double>.Count)
        {
            Vector<double> moved = share * new Vector<double>(amounts[lane..]);
            (new Vector<double>(from[lane..]) - moved).CopyTo(from[lane..]);
            (new Vector<double>(to[lane..]) + moved).CopyTo(to[lane..]);
        }

        for (; lane < amounts.Length; lane++)
        {
            double moved = share * amounts[lane];
            from[lane] -= moved;
            to[lane] += moved;
        }
    }
}
