using System.Globalization;

namespace Sequencer.Simulation.Traces;

/// <summary>Times of a run, to the scan, as an engineer says them.</summary>
internal static class TraceTimes
{
    /// <summary>When a scan (from 1) is done: the first at power-up.</summary>
    public static string Of(long scan, int scanMilliseconds) => Span((scan - 1) * scanMilliseconds);

    /// <summary>As <c>2 h 5 min 0.3 s</c>.</summary>
    public static string Span(long milliseconds)
    {
        (long hours, long rest) = Math.DivRem(milliseconds, 3_600_000);
        (long minutes, rest) = Math.DivRem(rest, 60_000);
        string seconds = (rest / 1000m).ToString("0.###", CultureInfo.InvariantCulture);
        List<string> words = [];
        if (hours > 0)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{hours} h"));
        }

        if (minutes > 0)
        {
            words.Add(string.Create(CultureInfo.InvariantCulture, $"{minutes} min"));
        }

        if (rest > 0 || words.Count == 0)
        {
            words.Add($"{seconds} s");
        }

        return string.Join(' ', words);
    }
}
