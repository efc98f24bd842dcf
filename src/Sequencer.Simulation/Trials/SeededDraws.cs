namespace Sequencer.Simulation.Trials;

/// <summary>
/// Draws that depend on the seed, the stream and a number alone: what a run draws does not depend on which other runs there
/// are, or on which thread or machine it is played.
/// </summary>
public static class SeededDraws
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    /// <summary>Evenly spread from 0 to below 1.</summary>
    public static double Share(ulong seed, ulong stream, ulong number) => (Mixed(seed, stream, number) >> 11) * (1.0 / (1UL << 53));

    /// <summary>0 to <paramref name="count"/> - 1 in a drawn order (Durstenfeld, Communications of the ACM 7 (1964) 420, algorithm 235).</summary>
    public static int[] Order(ulong seed, ulong stream, int count)
    {
        int[] order = new int[count];
        for (int index = 0; index < count; index++)
        {
            order[index] = index;
        }

        for (int last = count - 1; last > 0; last--)
        {
            int other = (int)(Share(seed, stream, (ulong)last) * (last + 1));
            (order[last], order[other]) = (order[other], order[last]);
        }

        return order;
    }

    private static ulong Mixed(ulong seed, ulong stream, ulong number) => Mix(Mix(Mix(seed) ^ (stream * Golden)) + (number * Golden));

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).</summary>
    private static ulong Mix(ulong value)
    {
        value += Golden;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
