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
    private readonly double[] _first;
    private readonly double[] _second;
    private readonly double[] _deviates;

    public Noise(ulong seed, int instruments)
    {
        int lanes = (instruments + Vector256<double>.Count - 1) / Vector256<double>.Count * Vector256<double>.Count;
        _starts = [.. Enumerable.Range(1, lanes).Select(instrument => Mix(seed + (Golden * (ulong)instrument)))];
        _first = new double[lanes];
        _second = new double[lanes];
        _deviates = new double[lanes];
    }

    /// <summary>Normal deviates of mean 0 and standard deviation 1, one for each instrument, of a reading (Box and Muller, Ann. Math. Stat. 29 (1958) 610).</summary>
    public ReadOnlySpan<double> Normal(long reading)
    {
        for (int instrument = 0; instrument < _starts.Length; instrument++)
        {
            ulong state = _starts[instrument] ^ ((ulong)reading * Golden);
            _first[instrument] = Unit(Mix(state));
            _second[instrument] = Unit(Mix(state + Golden));
        }

        for (int lane = 0; lane < _starts.Length; lane += Vector256<double>.Count)
        {
            Vector256<double> length = Vector256.Sqrt(-2.0 * Vector256.Log(Vector256.Create(_first, lane)));
            (length * Vector256.Cos(2.0 * Math.PI * Vector256.Create(_second, lane))).CopyTo(_deviates, lane);
        }

        return _deviates;
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
