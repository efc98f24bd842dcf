namespace Sequencer.Plant.Instruments;

/// <summary>
/// Noise that depends on the seed, the instrument and the reading's number alone, so that a run can
/// be taken up anywhere and two instruments never share a sequence.
/// </summary>
internal static class Noise
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    /// <summary>A normal deviate of mean 0 and standard deviation 1 (Box and Muller, Ann. Math. Stat. 29 (1958) 610).</summary>
    public static double Normal(ulong seed, int instrument, long reading)
    {
        ulong state = Mix(seed + (Golden * (ulong)(instrument + 1))) ^ ((ulong)reading * Golden);
        double first = Unit(Mix(state));
        double second = Unit(Mix(state + Golden));
        return Math.Sqrt(-2.0 * Math.Log(first)) * Math.Cos(2.0 * Math.PI * second);
    }

    /// <summary>Above 0 and not above 1.</summary>
    private static double Unit(ulong bits) => ((bits >> 11) + 1) * (1.0 / (1UL << 53));

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).</summary>
    private static ulong Mix(ulong value)
    {
        value += Golden;
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
