using System.Runtime.Intrinsics;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// Noise that depends on the seed, the instrument and the reading's number alone, so that a run can
/// be taken up anywhere and two instruments never share a sequence. For all instruments at once: a
/// logarithm and a cosine each would be a good part of a scan.
/// </summary>
internal sealed class Noise
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    private readonly ulong[] _starts;

    /// <summary>Of two readings, an even number's and the next.</summary>
    private readonly double[] _even;
    private readonly double[] _odd;
    private long _pair = -1;

    public Noise(ulong seed, int instruments)
    {
        int lanes = Lanes.For(instruments);
        _starts = [.. Enumerable.Range(1, lanes).Select(instrument => Mix(Vector256.Create(seed + (Golden * (ulong)instrument)))[0])];
        _even = new double[lanes];
        _odd = new double[lanes];
    }

    /// <summary>
    /// Normal deviates of mean 0 and standard deviation 1, one for each instrument, of a reading, from 0 (Box and Muller, Ann. Math. Stat. 29 (1958) 610: two
    /// from two uniform ones, here for two readings).
    /// </summary>
    public ReadOnlySpan<double> Normal(long reading)
    {
        if (reading >> 1 != _pair)
        {
            _pair = reading >> 1;
            Fill();
        }

        return (reading & 1) == 0 ? _even : _odd;
    }

    private void Fill()
    {
        Vector256<ulong> number = Vector256.Create((ulong)_pair * Golden);
        Vector256<ulong> golden = Vector256.Create(Golden);
        for (int lane = 0; lane < _starts.Length; lane += Vector256<ulong>.Count)
        {
            Vector256<ulong> state = Vector256.Create(_starts, lane) ^ number;
            Vector256<double> length = Vector256.Sqrt(-2.0 * Vector256.Log(Unit(Mix(state))));
            (Vector256<double> sine, Vector256<double> cosine) = Vector256.SinCos(2.0 * Math.PI * Unit(Mix(state + golden)));
            (length * cosine).CopyTo(_even, lane);
            (length * sine).CopyTo(_odd, lane);
        }
    }

    /// <summary>Above 0 and not above 1. The whole numbers are not above 2^53, so that doubles hold them.</summary>
    private static Vector256<double> Unit(Vector256<ulong> bits) =>
        Vector256.ConvertToDouble((bits >> 11) + Vector256<ulong>.One) * (1.0 / (1UL << 53));

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).</summary>
    private static Vector256<ulong> Mix(Vector256<ulong> value)
    {
        value += Vector256.Create(Golden);
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
