using System.Globalization;

namespace Sequencer.Language.Units;

/// <summary>A length of time, exact to the millisecond.</summary>
public readonly record struct Duration(long Milliseconds)
{
    private static readonly (long Milliseconds, string Symbol)[] Words = [(3_600_000, "h"), (60_000, "min"), (1_000, "s")];

    /// <summary>The number of scans that last at least as long.</summary>
    public long Scans(int scanMilliseconds) => (Milliseconds + scanMilliseconds - 1) / scanMilliseconds;

    /// <summary>In every unit it has some of, the largest first: <c>1 h 34 min</c>.</summary>
    public string InParts()
    {
        List<string> parts = [];
        long rest = Milliseconds;
        foreach ((long milliseconds, string symbol) in Words.Append((1, "ms")))
        {
            if (rest >= milliseconds)
            {
                parts.Add(string.Create(CultureInfo.InvariantCulture, $"{rest / milliseconds} {symbol}"));
                rest %= milliseconds;
            }
        }

        return parts.Count == 0 ? "0 s" : string.Join(' ', parts);
    }

    /// <summary>In the largest unit that needs no fraction.</summary>
    public override string ToString()
    {
        foreach ((long milliseconds, string symbol) in Words)
        {
            if (Milliseconds >= milliseconds && Milliseconds % milliseconds == 0)
            {
                return string.Create(CultureInfo.InvariantCulture, $"{Milliseconds / milliseconds} {symbol}");
            }
        }

        return string.Create(CultureInfo.InvariantCulture, $"{Milliseconds} ms");
    }
}
