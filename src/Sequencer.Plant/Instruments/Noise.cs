using System.Runtime.Intrinsics;

namespace Sequencer.Plant.Instruments;

/// <summary>
/// Noise that depends on the seed, the instrument and the reading's number alone, so that a run can
/// be taken up anywhere and two instruments never share a sequence. For all instruments at once: a
/// logarithm and a cosine each would be a good part of a scan. In single precision: no deviate is further out than 5.8.
/// </summary>
internal sealed class Noise
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    private static readonly Vector256<ulong> Low = Vector256.Create((ulong)uint.MaxValue);

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
        for (int lane = 0; lane < _starts.Length; lane += Vector256<float>.Count)
        {
            Vector256<ulong> lower = Mix(Vector256.Create(_starts, lane) ^ number);
            Vector256<ulong> upper = Mix(Vector256.Create(_starts, lane + Vector256<ulong>.Count) ^ number);
            Vector256<float> length = Vector256.Sqrt(-2.0f * Vector256.Log(Unit(Vector256.Narrow(lower >> 32, upper >> 32))));
            (Vector256<float> sine, Vector256<float> cosine) = Vector256.SinCos(2.0f * MathF.PI * Unit(Vector256.Narrow(lower & Low, upper & Low)));
            Write(length * cosine, _even, lane);
            Write(length * sine, _odd, lane);
        }
    }

    private static void Write(Vector256<float> deviates, double[] target, int lane)
    {
        (Vector256<double> lower, Vector256<double> upper) = Vector256.Widen(deviates);
        lower.CopyTo(target, lane);
        upper.CopyTo(target, lane + Vector256<double>.Count);
    }

    /// <summary>Above 0 and not above 1, by the highest bits: as many as a float holds.</summary>
    private static Vector256<float> Unit(Vector256<uint> bits) =>
        Vector256.ConvertToSingle((bits >> 8).AsInt32() + Vector256<int>.One) * (1.0f / (1 << 24));

    /// <summary>The finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).</summary>
    private static Vector256<ulong> Mix(Vector256<ulong> value)
    {
        value += Vector256.Create(Golden);
        value = (value ^ (value >> 30)) * 0xBF58476D1CE4E5B9UL;
        value = (value ^ (value >> 27)) * 0x94D049BB133111EBUL;
        return value ^ (value >> 31);
    }
}
