using System.Globalization;
using System.Text;
using Sequencer.Language.Units;

namespace Sequencer.Export.Writing;

/// <summary>Durations as literals, <c>T#1h30m</c>, largest unit first.</summary>
internal static class DurationText
{
    private static readonly (long Milliseconds, string Symbol)[] Parts = [(3_600_000, "h"), (60_000, "m"), (1_000, "s"), (1, "ms")];

    public static string Of(Duration duration)
    {
        StringBuilder text = new("T#");
        long rest = duration.Milliseconds;
        foreach ((long milliseconds, string symbol) in Parts)
        {
            if (rest >= milliseconds)
            {
                text.Append((rest / milliseconds).ToString(CultureInfo.InvariantCulture)).Append(symbol);
                rest %= milliseconds;
            }
        }

        return text.Length == 2 ? "T#0s" : text.ToString();
    }
}
