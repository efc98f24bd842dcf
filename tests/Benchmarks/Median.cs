using System.Diagnostics;

namespace Sequencer.Benchmarks;

/// <summary>Medians of repeated timings: robust against what else the machine does.</summary>
internal static class Median
{
    private const int FewestRepeats = 9;
    private const int MostRepeats = 401;

    /// <summary>Repeating ends here, if there were enough.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    /// <summary>Nanoseconds for one operation; <paramref name="batch"/> does that many of them. Once for warming up.</summary>
    public static double Nanoseconds(int operations, Action batch)
    {
        batch();
        List<double> times = [];
        long begin = Stopwatch.GetTimestamp();
        while (times.Count < FewestRepeats || (times.Count < MostRepeats && Stopwatch.GetElapsedTime(begin) < Patience))
        {
            long start = Stopwatch.GetTimestamp();
            batch();
            times.Add(Stopwatch.GetElapsedTime(start).TotalNanoseconds / operations);
        }

        times.Sort();
        return times[times.Count / 2];
    }

    /// <summary>Milliseconds for one run.</summary>
    public static double Milliseconds(Action run) => Nanoseconds(1, run) / 1e6;
}
